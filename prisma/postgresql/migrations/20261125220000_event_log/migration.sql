ALTER TABLE "RunEvent" ADD COLUMN "personId" TEXT;
ALTER TABLE "RunEvent" ADD COLUMN "deviceId" TEXT;
ALTER TABLE "RunEvent" ADD COLUMN "deviceSeq" INTEGER;
ALTER TABLE "RunEvent" ADD COLUMN "deviceTime" TEXT;
CREATE UNIQUE INDEX "RunEvent_deviceId_deviceSeq_key" ON "RunEvent"("deviceId", "deviceSeq");

CREATE TABLE "Strike" (
    "seq" BIGSERIAL NOT NULL PRIMARY KEY,
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "thing" TEXT NOT NULL,
    "thingId" TEXT NOT NULL,
    "struck" BOOLEAN NOT NULL,
    "lineSeq" BIGINT NOT NULL,
    "personId" TEXT,
    "deviceTime" TEXT NOT NULL,
    "receivedAt" TEXT NOT NULL,
    "deviceId" TEXT NOT NULL,
    "deviceSeq" INTEGER NOT NULL
);

CREATE UNIQUE INDEX "Strike_id_key" ON "Strike"("id");

CREATE UNIQUE INDEX "Strike_deviceId_deviceSeq_key" ON "Strike"("deviceId", "deviceSeq");

-- Only ever added to, like readings.
CREATE TRIGGER "Strike_append_only" BEFORE UPDATE OR DELETE ON "Strike"
  FOR EACH ROW EXECUTE FUNCTION "append_only"();
CREATE TRIGGER "Strike_no_truncate" BEFORE TRUNCATE ON "Strike"
  FOR EACH STATEMENT EXECUTE FUNCTION "append_only"();

CREATE TABLE "Strike" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
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
CREATE TRIGGER "Strike_no_update" BEFORE UPDATE ON "Strike"
BEGIN SELECT RAISE(ABORT, 'append-only: Strike rows are never changed or deleted'); END;
CREATE TRIGGER "Strike_no_delete" BEFORE DELETE ON "Strike"
BEGIN SELECT RAISE(ABORT, 'append-only: Strike rows are never changed or deleted'); END;

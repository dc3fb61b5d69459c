CREATE TABLE "Job" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "drawing" TEXT NOT NULL DEFAULT '',
    "revision" TEXT NOT NULL DEFAULT '',
    "unit" TEXT NOT NULL,
    "finishedAt" TEXT
);

CREATE TABLE "Person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "name" TEXT NOT NULL
);

CREATE TABLE "Gauge" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "resolutionPm" BIGINT NOT NULL,
    "uncertaintyPm" BIGINT,
    "rangeLowPm" BIGINT,
    "rangeHighPm" BIGINT,
    "checkedOn" TEXT,
    "note" TEXT NOT NULL DEFAULT ''
);

CREATE TABLE "Setting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "decimal" TEXT,
    "unitShown" TEXT,
    "theme" TEXT,
    "hand" TEXT,
    "personId" TEXT
);

CREATE TABLE "Picture" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "mediaType" TEXT NOT NULL,
    "widthPx" INTEGER NOT NULL,
    "heightPx" INTEGER NOT NULL,
    "bytes" BLOB NOT NULL,
    CONSTRAINT "Picture_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Part" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "material" TEXT NOT NULL DEFAULT '',
    "prefix" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    CONSTRAINT "Part_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Piece" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "mark" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Piece_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Piece_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Feature" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "partId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "balloon" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "asDrawn" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "nominalPm" BIGINT NOT NULL,
    "upperPm" BIGINT,
    "lowerPm" BIGINT,
    "isoClass" TEXT,
    "stations" JSONB NOT NULL,
    "directions" JSONB NOT NULL,
    "pictureId" TEXT,
    "pictureX" REAL,
    "pictureY" REAL,
    CONSTRAINT "Feature_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Feature_partId_fkey" FOREIGN KEY ("partId") REFERENCES "Part" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Departure" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "partId" TEXT,
    "made" TEXT NOT NULL,
    "drawn" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "touches" TEXT NOT NULL,
    CONSTRAINT "Departure_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Fit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "internalFeatureId" TEXT NOT NULL,
    "externalFeatureId" TEXT NOT NULL,
    "way" TEXT NOT NULL,
    "classes" TEXT,
    "minPm" BIGINT NOT NULL,
    "maxPm" BIGINT NOT NULL,
    "aimPm" BIGINT NOT NULL,
    "governs" TEXT NOT NULL,
    CONSTRAINT "Fit_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Pair" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "fitId" TEXT NOT NULL,
    "internalPieceId" TEXT NOT NULL,
    "externalPieceId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "mark" TEXT NOT NULL DEFAULT '',
    "clearancePm" BIGINT,
    "uncertaintyPm" BIGINT,
    "decidedAt" TEXT,
    "personId" TEXT,
    CONSTRAINT "Pair_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Pair_fitId_fkey" FOREIGN KEY ("fitId") REFERENCES "Fit" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Cut" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "pieceId" TEXT NOT NULL,
    "featureId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "lastReadingId" TEXT,
    "spring" BOOLEAN NOT NULL,
    "askedPm" BIGINT NOT NULL,
    "beforePm" BIGINT NOT NULL,
    "afterPm" BIGINT,
    "tool" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Cut_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Run" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "featureId" TEXT NOT NULL,
    "dial" TEXT NOT NULL,
    "divisionPm" BIGINT NOT NULL,
    CONSTRAINT "Run_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "RunEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "jobId" TEXT NOT NULL,
    "runId" TEXT NOT NULL,
    "afterOrdinal" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "offsetPm" BIGINT,
    "at" TEXT NOT NULL,
    CONSTRAINT "RunEvent_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "RunEvent_runId_fkey" FOREIGN KEY ("runId") REFERENCES "Run" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

CREATE TABLE "Reading" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "pieceId" TEXT NOT NULL,
    "featureId" TEXT NOT NULL,
    "gaugeId" TEXT NOT NULL,
    "personId" TEXT,
    "station" TEXT NOT NULL,
    "direction" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "valuePm" BIGINT NOT NULL,
    "resolutionPm" BIGINT NOT NULL,
    "temperatureMilliC" INTEGER,
    "heldAs" TEXT,
    "deviceTime" TEXT NOT NULL,
    "receivedAt" TEXT NOT NULL,
    "deviceId" TEXT NOT NULL,
    "deviceSeq" BIGINT NOT NULL
);

CREATE TABLE "Correction" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "jobId" TEXT,
    "readingId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "toPieceId" TEXT,
    "toFeatureId" TEXT,
    "toStation" TEXT,
    "toDirection" TEXT,
    "text" TEXT,
    "unit" TEXT,
    "valuePm" BIGINT,
    "resolutionPm" BIGINT,
    "personId" TEXT,
    "deviceTime" TEXT NOT NULL,
    "receivedAt" TEXT NOT NULL,
    "deviceId" TEXT NOT NULL,
    "deviceSeq" BIGINT NOT NULL
);

CREATE TABLE "ChangeLog" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "at" TEXT NOT NULL,
    "personId" TEXT,
    "deviceId" TEXT NOT NULL,
    "jobId" TEXT,
    "thing" TEXT NOT NULL,
    "thingId" TEXT NOT NULL,
    "act" TEXT NOT NULL,
    "before" TEXT,
    "after" TEXT
);

CREATE UNIQUE INDEX "Reading_id_key" ON "Reading"("id");

CREATE INDEX "Reading_jobId_pieceId_idx" ON "Reading"("jobId", "pieceId");

CREATE INDEX "Reading_gaugeId_idx" ON "Reading"("gaugeId");

CREATE UNIQUE INDEX "Reading_deviceId_deviceSeq_key" ON "Reading"("deviceId", "deviceSeq");

CREATE UNIQUE INDEX "Correction_id_key" ON "Correction"("id");

CREATE INDEX "Correction_jobId_idx" ON "Correction"("jobId");

CREATE INDEX "Correction_readingId_idx" ON "Correction"("readingId");

CREATE UNIQUE INDEX "Correction_deviceId_deviceSeq_key" ON "Correction"("deviceId", "deviceSeq");

CREATE INDEX "ChangeLog_jobId_seq_idx" ON "ChangeLog"("jobId", "seq");

CREATE INDEX "Fit_jobId_idx" ON "Fit"("jobId");

CREATE INDEX "Pair_jobId_idx" ON "Pair"("jobId");

CREATE INDEX "Cut_jobId_idx" ON "Cut"("jobId");

CREATE INDEX "Run_jobId_idx" ON "Run"("jobId");

CREATE INDEX "RunEvent_jobId_idx" ON "RunEvent"("jobId");

CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");

CREATE INDEX "Picture_jobId_idx" ON "Picture"("jobId");

CREATE INDEX "Part_jobId_idx" ON "Part"("jobId");

CREATE INDEX "Piece_jobId_idx" ON "Piece"("jobId");

CREATE INDEX "Piece_partId_idx" ON "Piece"("partId");

CREATE INDEX "Feature_jobId_idx" ON "Feature"("jobId");

CREATE INDEX "Feature_partId_idx" ON "Feature"("partId");

CREATE INDEX "Departure_jobId_idx" ON "Departure"("jobId");

-- Readings, corrections and the change log are only ever added to.
CREATE TRIGGER "Reading_no_update" BEFORE UPDATE ON "Reading"
BEGIN SELECT RAISE(ABORT, 'append-only: Reading rows are never changed or deleted'); END;
CREATE TRIGGER "Reading_no_delete" BEFORE DELETE ON "Reading"
BEGIN SELECT RAISE(ABORT, 'append-only: Reading rows are never changed or deleted'); END;
CREATE TRIGGER "Correction_no_update" BEFORE UPDATE ON "Correction"
BEGIN SELECT RAISE(ABORT, 'append-only: Correction rows are never changed or deleted'); END;
CREATE TRIGGER "Correction_no_delete" BEFORE DELETE ON "Correction"
BEGIN SELECT RAISE(ABORT, 'append-only: Correction rows are never changed or deleted'); END;
CREATE TRIGGER "ChangeLog_no_update" BEFORE UPDATE ON "ChangeLog"
BEGIN SELECT RAISE(ABORT, 'append-only: ChangeLog rows are never changed or deleted'); END;
CREATE TRIGGER "ChangeLog_no_delete" BEFORE DELETE ON "ChangeLog"
BEGIN SELECT RAISE(ABORT, 'append-only: ChangeLog rows are never changed or deleted'); END;

-- A reading or a correction takes its place in the one rising order in the act of being kept.
CREATE TRIGGER "Reading_logged" AFTER INSERT ON "Reading"
BEGIN
  INSERT INTO "ChangeLog" ("at", "personId", "deviceId", "jobId", "thing", "thingId", "act")
  VALUES (NEW."receivedAt", NEW."personId", NEW."deviceId", NEW."jobId", 'reading', NEW."id", 'kept');
END;
CREATE TRIGGER "Correction_logged" AFTER INSERT ON "Correction"
BEGIN
  INSERT INTO "ChangeLog" ("at", "personId", "deviceId", "jobId", "thing", "thingId", "act")
  VALUES (NEW."receivedAt", NEW."personId", NEW."deviceId", NEW."jobId", 'correction', NEW."id", 'kept');
END;

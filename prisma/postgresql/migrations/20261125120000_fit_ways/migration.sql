ALTER TABLE "Fit" ADD COLUMN "atPm" BIGINT;
ALTER TABLE "Fit" ADD COLUMN "ruleName" TEXT;
ALTER TABLE "Fit" ADD COLUMN "ruleFixedPm" BIGINT;
ALTER TABLE "Fit" ADD COLUMN "ruleMinNmPerMm" INTEGER;
ALTER TABLE "Fit" ADD COLUMN "ruleAimNmPerMm" INTEGER;
ALTER TABLE "Fit" ADD COLUMN "ruleMaxNmPerMm" INTEGER;
ALTER TABLE "Fit" ADD COLUMN "soakedLowMilliC" INTEGER;
ALTER TABLE "Fit" ADD COLUMN "soakedHighMilliC" INTEGER;
ALTER TABLE "Fit" ADD COLUMN "badInternalMilliC" INTEGER;
ALTER TABLE "Fit" ADD COLUMN "badExternalMilliC" INTEGER;

CREATE TABLE "Material" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "name" TEXT NOT NULL,
    "expansionNanoPerC" INTEGER NOT NULL,
    "lowNanoPerC" INTEGER NOT NULL,
    "highNanoPerC" INTEGER NOT NULL,
    "source" TEXT NOT NULL DEFAULT ''
);

CREATE TABLE "FitRule" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TEXT NOT NULL,
    "struckAt" TEXT,
    "name" TEXT NOT NULL,
    "fixedPm" BIGINT NOT NULL,
    "minNmPerMm" INTEGER NOT NULL,
    "aimNmPerMm" INTEGER NOT NULL,
    "maxNmPerMm" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT ''
);

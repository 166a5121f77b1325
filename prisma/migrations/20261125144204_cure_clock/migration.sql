-- CreateTable
CREATE TABLE "Reading" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "bayId" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "source" TEXT NOT NULL,
    "airC" REAL NOT NULL,
    "panelC" REAL,
    "humidityPercent" REAL,
    "sensorId" TEXT,
    "voidedAt" INTEGER,
    CONSTRAINT "Reading_bayId_fkey" FOREIGN KEY ("bayId") REFERENCES "Bay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Reading_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "SensorToken" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ColumnMapping" (
    "columns" TEXT NOT NULL PRIMARY KEY,
    "mapping" JSONB NOT NULL,
    "dateOrder" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "usedAt" INTEGER NOT NULL
);

-- CreateTable
CREATE TABLE "SensorToken" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "bayId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "createdAt" INTEGER NOT NULL,
    "revokedAt" INTEGER,
    CONSTRAINT "SensorToken_bayId_fkey" FOREIGN KEY ("bayId") REFERENCES "Bay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BayUsual" (
    "bayId" TEXT NOT NULL PRIMARY KEY,
    "celsius" REAL NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "BayUsual_bayId_fkey" FOREIGN KEY ("bayId") REFERENCES "Bay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ConditionCheck" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "productName" TEXT NOT NULL,
    "readingAt" INTEGER,
    "airC" REAL,
    "humidityPercent" REAL,
    "panelC" REAL,
    "dewC" REAL,
    "marginC" REAL,
    "warnings" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    CONSTRAINT "ConditionCheck_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ForcedCure" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "fromAt" INTEGER NOT NULL,
    "toAt" INTEGER NOT NULL,
    "panelC" REAL NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "who" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "voidedAt" INTEGER,
    CONSTRAINT "ForcedCure_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "NoticeSeen" (
    "jobId" TEXT NOT NULL,
    "coatEndAt" INTEGER NOT NULL,
    "moment" TEXT NOT NULL,
    "toldAt" INTEGER NOT NULL,

    PRIMARY KEY ("jobId", "coatEndAt", "moment"),
    CONSTRAINT "NoticeSeen_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AppliedRecord" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "draft" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "AppliedRecord_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AppliedEntry" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "recordId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "signedBy" TEXT NOT NULL,
    "signedAt" INTEGER NOT NULL,
    "correctsId" TEXT,
    CONSTRAINT "AppliedEntry_recordId_fkey" FOREIGN KEY ("recordId") REFERENCES "AppliedRecord" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "AppliedEntry_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "AppliedEntry" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Reading_bayId_at_source_key" ON "Reading"("bayId", "at", "source");

-- CreateIndex
CREATE UNIQUE INDEX "SensorToken_hash_key" ON "SensorToken"("hash");

-- CreateIndex
CREATE INDEX "ConditionCheck_jobId_position_idx" ON "ConditionCheck"("jobId", "position");

-- CreateIndex
CREATE INDEX "ForcedCure_jobId_idx" ON "ForcedCure"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "AppliedRecord_jobId_key" ON "AppliedRecord"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "AppliedEntry_recordId_number_key" ON "AppliedEntry"("recordId", "number");

-- What was signed is proof for years: these stand even where a program has a slip.
CREATE TRIGGER "AppliedEntry_never_changed" BEFORE UPDATE ON "AppliedEntry"
BEGIN
    SELECT RAISE(ABORT, 'a signed entry is never changed: sign a correction');
END;
CREATE TRIGGER "AppliedEntry_never_deleted" BEFORE DELETE ON "AppliedEntry"
BEGIN
    SELECT RAISE(ABORT, 'a signed entry is never deleted: sign a correction');
END;
CREATE TRIGGER "AppliedRecord_kept_once_signed" BEFORE UPDATE ON "AppliedRecord"
WHEN EXISTS (SELECT 1 FROM "AppliedEntry" WHERE "recordId" = OLD."id")
BEGIN
    SELECT RAISE(ABORT, 'a signed record is never changed: sign a correction');
END;
CREATE TRIGGER "ConditionCheck_never_changed" BEFORE UPDATE ON "ConditionCheck"
BEGIN
    SELECT RAISE(ABORT, 'the conditions of a coat are never changed');
END;
CREATE TRIGGER "ConditionCheck_never_deleted" BEFORE DELETE ON "ConditionCheck"
BEGIN
    SELECT RAISE(ABORT, 'the conditions of a coat are never deleted');
END;

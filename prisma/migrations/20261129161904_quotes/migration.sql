-- CreateTable
CREATE TABLE "Quote" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "vehicleId" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "scope" TEXT NOT NULL DEFAULT 'whole',
    "validUntil" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" INTEGER NOT NULL,
    "accepted" INTEGER,
    "signedName" TEXT NOT NULL DEFAULT '',
    "signedAt" INTEGER,
    "signature" TEXT NOT NULL DEFAULT '',
    "jobId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Quote_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Quote_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "QuoteVariant" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "quoteId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "treatments" JSONB NOT NULL,
    "charges" JSONB NOT NULL,
    "priceMinor" INTEGER NOT NULL,
    "lasts" JSONB NOT NULL,
    "upkeepVisits" INTEGER NOT NULL,
    "upkeepMinor" INTEGER,
    "dropOffAt" INTEGER NOT NULL,
    "handoverAt" INTEGER NOT NULL,
    CONSTRAINT "QuoteVariant_quoteId_fkey" FOREIGN KEY ("quoteId") REFERENCES "Quote" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Quote_number_key" ON "Quote"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Quote_jobId_key" ON "Quote"("jobId");

-- CreateIndex
CREATE INDEX "Quote_vehicleId_idx" ON "Quote"("vehicleId");

-- CreateIndex
CREATE INDEX "Quote_createdAt_idx" ON "Quote"("createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "QuoteVariant_quoteId_position_key" ON "QuoteVariant"("quoteId", "position");

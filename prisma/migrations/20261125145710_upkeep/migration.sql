-- CreateTable
CREATE TABLE "Layer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "vehicleId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "laidOn" TEXT NOT NULL,
    "jobId" TEXT,
    CONSTRAINT "Layer_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Layer_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Layer_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "UpkeepPlan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "vehicleId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "rule" TEXT NOT NULL,
    "anchorTo" TEXT NOT NULL,
    "anchorOn" TEXT NOT NULL,
    "anchorEvent" TEXT NOT NULL DEFAULT '',
    "earlyDays" INTEGER NOT NULL,
    "lateDays" INTEGER NOT NULL,
    "productId" TEXT,
    "jobId" TEXT,
    "createdAt" INTEGER NOT NULL,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "UpkeepPlan_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "UpkeepPlan_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "UpkeepPlan_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "UpkeepEntry" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "actId" TEXT NOT NULL,
    "vehicleId" TEXT NOT NULL,
    "planId" TEXT,
    "what" TEXT NOT NULL,
    "ruleOn" TEXT,
    "onDay" TEXT,
    "toDay" TEXT,
    "rule" TEXT,
    "why" TEXT NOT NULL DEFAULT '',
    "jobId" TEXT,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "voidedAt" INTEGER,
    CONSTRAINT "UpkeepEntry_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "UpkeepEntry_planId_fkey" FOREIGN KEY ("planId") REFERENCES "UpkeepPlan" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "UpkeepEntry_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Inspection" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "layerId" TEXT NOT NULL,
    "onDay" TEXT NOT NULL,
    "working" BOOLEAN NOT NULL,
    "exposure" REAL NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "voidedAt" INTEGER,
    CONSTRAINT "Inspection_layerId_fkey" FOREIGN KEY ("layerId") REFERENCES "Layer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "VehicleExposure" (
    "vehicleId" TEXT NOT NULL PRIMARY KEY,
    "choices" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "VehicleExposure_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ProductLife" (
    "productId" TEXT NOT NULL PRIMARY KEY,
    "intervalDays" INTEGER NOT NULL,
    "mark" TEXT NOT NULL,
    "shape" REAL NOT NULL,
    "ageSpread" REAL NOT NULL,
    "shapeSpread" REAL NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ProductLife_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OwnerReach" (
    "customerId" TEXT NOT NULL PRIMARY KEY,
    "language" TEXT,
    "zone" TEXT,
    "postal" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "OwnerReach_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Consent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "customerId" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "address" TEXT,
    "source" TEXT NOT NULL,
    "wording" TEXT NOT NULL,
    "who" TEXT NOT NULL,
    CONSTRAINT "Consent_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Template" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    "words" JSONB NOT NULL,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "Message" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "mailId" TEXT NOT NULL,
    "customerId" TEXT NOT NULL,
    "vehicleId" TEXT NOT NULL,
    "planId" TEXT NOT NULL,
    "ruleOn" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "tryNo" INTEGER NOT NULL,
    "templateId" TEXT NOT NULL,
    "language" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "unfilled" JSONB NOT NULL,
    "slots" JSONB NOT NULL,
    "state" TEXT NOT NULL,
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "notBeforeAt" INTEGER,
    "startedAt" INTEGER,
    "sentAt" INTEGER,
    "failure" JSONB,
    "waiting" TEXT,
    "unanswered" INTEGER NOT NULL DEFAULT 0,
    "stopAsked" BOOLEAN NOT NULL DEFAULT false,
    "withdrawnBecause" TEXT,
    "outcome" TEXT,
    "outcomeAt" INTEGER,
    "nextTryOn" TEXT,
    "createdAt" INTEGER NOT NULL,
    "approvedBy" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Message_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Message_vehicleId_fkey" FOREIGN KEY ("vehicleId") REFERENCES "Vehicle" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Message_planId_fkey" FOREIGN KEY ("planId") REFERENCES "UpkeepPlan" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Bounce" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "address" TEXT NOT NULL,
    "messageId" TEXT,
    "at" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "voidedAt" INTEGER
);

-- CreateTable
CREATE TABLE "UpkeepSettings" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "rules" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "FeedToken" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "details" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" INTEGER NOT NULL,
    "revokedAt" INTEGER
);

-- CreateIndex
CREATE INDEX "Layer_vehicleId_laidOn_idx" ON "Layer"("vehicleId", "laidOn");

-- CreateIndex
CREATE INDEX "Layer_productId_idx" ON "Layer"("productId");

-- CreateIndex
CREATE INDEX "Layer_jobId_idx" ON "Layer"("jobId");

-- CreateIndex
CREATE INDEX "UpkeepPlan_vehicleId_idx" ON "UpkeepPlan"("vehicleId");

-- CreateIndex
CREATE INDEX "UpkeepPlan_productId_idx" ON "UpkeepPlan"("productId");

-- CreateIndex
CREATE INDEX "UpkeepPlan_jobId_idx" ON "UpkeepPlan"("jobId");

-- CreateIndex
CREATE INDEX "UpkeepEntry_actId_idx" ON "UpkeepEntry"("actId");

-- CreateIndex
CREATE INDEX "UpkeepEntry_planId_idx" ON "UpkeepEntry"("planId");

-- CreateIndex
CREATE INDEX "UpkeepEntry_vehicleId_idx" ON "UpkeepEntry"("vehicleId");

-- CreateIndex
CREATE INDEX "UpkeepEntry_jobId_idx" ON "UpkeepEntry"("jobId");

-- CreateIndex
CREATE INDEX "Inspection_layerId_idx" ON "Inspection"("layerId");

-- CreateIndex
CREATE INDEX "Consent_customerId_idx" ON "Consent"("customerId");

-- CreateIndex
CREATE INDEX "Consent_address_idx" ON "Consent"("address");

-- CreateIndex
CREATE UNIQUE INDEX "Message_mailId_key" ON "Message"("mailId");

-- CreateIndex
CREATE INDEX "Message_state_channel_idx" ON "Message"("state", "channel");

-- CreateIndex
CREATE INDEX "Message_customerId_idx" ON "Message"("customerId");

-- CreateIndex
CREATE INDEX "Message_planId_ruleOn_idx" ON "Message"("planId", "ruleOn");

-- CreateIndex
CREATE INDEX "Message_vehicleId_idx" ON "Message"("vehicleId");

-- CreateIndex
CREATE INDEX "Message_sentAt_idx" ON "Message"("sentAt");

-- CreateIndex
CREATE INDEX "Bounce_address_idx" ON "Bounce"("address");

-- CreateIndex
CREATE UNIQUE INDEX "FeedToken_hash_key" ON "FeedToken"("hash");

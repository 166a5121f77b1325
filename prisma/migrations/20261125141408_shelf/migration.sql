-- CreateTable
CREATE TABLE "ShelfRules" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "services" JSONB NOT NULL,
    "holdRatePerYear" REAL NOT NULL DEFAULT 0.25,
    "lineCostMinor" INTEGER NOT NULL DEFAULT 0,
    "flammableLimitMl" INTEGER,
    "regime" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "ShelfProduct" (
    "productId" TEXT NOT NULL PRIMARY KEY,
    "unit" TEXT NOT NULL,
    "densityGPerMl" REAL,
    "lifeAfterOpeningDays" INTEGER,
    "lifeUnlimited" BOOLEAN NOT NULL DEFAULT false,
    "storageLeastC" REAL,
    "storageMostC" REAL,
    "place" TEXT NOT NULL DEFAULT '',
    "serviceClass" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ShelfProduct_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ProductSafety" (
    "productId" TEXT NOT NULL PRIMARY KEY,
    "revisedOn" TEXT,
    "hazardCodes" JSONB,
    "precautionaryCodes" JSONB,
    "signalWord" TEXT,
    "protection" JSONB,
    "storageGroup" TEXT,
    "unNumber" TEXT,
    "ph" REAL,
    "maker" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "sheetFileId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ProductSafety_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ProductSafety_sheetFileId_fkey" FOREIGN KEY ("sheetFileId") REFERENCES "StoredFile" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StoredFile" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "bytes" BLOB NOT NULL,
    "size" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "ContainerSize" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "productId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "labelCenti" INTEGER NOT NULL,
    "measuredCenti" INTEGER,
    "tareG" REAL,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ContainerSize_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ProductCode" (
    "code" TEXT NOT NULL PRIMARY KEY,
    "productId" TEXT NOT NULL,
    "sizeId" TEXT,
    "learnedAt" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    CONSTRAINT "ProductCode_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ProductCode_sizeId_fkey" FOREIGN KEY ("sizeId") REFERENCES "ContainerSize" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Supplier" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "phone" TEXT,
    "account" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "weekdays" JSONB NOT NULL,
    "closedOn" JSONB NOT NULL,
    "cutoffMin" INTEGER,
    "leadMeanDays" REAL NOT NULL,
    "leadSdDays" REAL NOT NULL,
    "minimumOrderMinor" INTEGER NOT NULL DEFAULT 0,
    "carriageMinor" INTEGER NOT NULL DEFAULT 0,
    "freeCarriageFromMinor" INTEGER,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "SupplierOffer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "supplierId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "sizeId" TEXT NOT NULL,
    "article" TEXT NOT NULL DEFAULT '',
    "containersPerPack" INTEGER NOT NULL DEFAULT 1,
    "breaks" JSONB NOT NULL,
    "shelfLifeDays" INTEGER,
    "preferred" BOOLEAN NOT NULL DEFAULT true,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "SupplierOffer_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SupplierOffer_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SupplierOffer_sizeId_fkey" FOREIGN KEY ("sizeId") REFERENCES "ContainerSize" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Lot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "productId" TEXT NOT NULL,
    "sizeId" TEXT,
    "batch" TEXT,
    "receivedOn" TEXT NOT NULL,
    "expiresOn" TEXT,
    "openedOn" TEXT,
    "lifeAfterOpeningDays" INTEGER,
    "supplierId" TEXT,
    "orderLineId" TEXT,
    CONSTRAINT "Lot_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Lot_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Lot_sizeId_fkey" FOREIGN KEY ("sizeId") REFERENCES "ContainerSize" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Lot_orderLineId_fkey" FOREIGN KEY ("orderLineId") REFERENCES "PurchaseOrderLine" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StockMove" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "lotId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "centi" INTEGER NOT NULL,
    "at" INTEGER NOT NULL,
    "by" TEXT NOT NULL,
    "why" TEXT,
    "jobId" TEXT,
    "position" INTEGER,
    "costMinor" INTEGER,
    "correctsSeq" INTEGER,
    CONSTRAINT "StockMove_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StockMove_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StepDraw" (
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "productId" TEXT NOT NULL,
    "expectedCenti" INTEGER NOT NULL,
    "sdCenti" INTEGER NOT NULL,
    "confirmedAt" INTEGER,
    "actualCenti" INTEGER,
    "how" TEXT,

    PRIMARY KEY ("jobId", "position", "productId"),
    CONSTRAINT "StepDraw_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StepDraw_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PurchaseOrder" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "supplierId" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "createdAt" INTEGER NOT NULL,
    "sentAt" INTEGER,
    "expectedOn" TEXT,
    "lateFromOn" TEXT,
    "firstReceivedAt" INTEGER,
    "closedAt" INTEGER,
    "carriageMinor" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "PurchaseOrder_supplierId_fkey" FOREIGN KEY ("supplierId") REFERENCES "Supplier" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PurchaseOrderLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "orderId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "productId" TEXT NOT NULL,
    "sizeId" TEXT NOT NULL,
    "article" TEXT NOT NULL DEFAULT '',
    "packs" INTEGER NOT NULL,
    "packCenti" INTEGER NOT NULL,
    "containersPerPack" INTEGER NOT NULL,
    "packPriceMinor" INTEGER NOT NULL,
    "receivedContainers" INTEGER NOT NULL DEFAULT 0,
    "why" JSONB NOT NULL,
    CONSTRAINT "PurchaseOrderLine_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "PurchaseOrder" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "PurchaseOrderLine_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "PurchaseOrderLine_sizeId_fkey" FOREIGN KEY ("sizeId") REFERENCES "ContainerSize" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OrderMessage" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "orderId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "failure" TEXT,
    CONSTRAINT "OrderMessage_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "PurchaseOrder" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MailSettings" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "host" TEXT NOT NULL,
    "port" INTEGER NOT NULL,
    "security" TEXT NOT NULL,
    "user" TEXT,
    "fromName" TEXT NOT NULL,
    "fromAddress" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_TreatmentStep" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "treatmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "needs" TEXT NOT NULL,
    "skill" TEXT,
    "crew" INTEGER NOT NULL DEFAULT 1,
    "splittable" BOOLEAN NOT NULL DEFAULT false,
    "sameBay" BOOLEAN NOT NULL DEFAULT false,
    "waitMin" INTEGER,
    "waitMax" INTEGER,
    "minutes" JSONB NOT NULL,
    "byCondition" BOOLEAN NOT NULL DEFAULT false,
    "productId" TEXT,
    "draws" JSONB NOT NULL DEFAULT [],
    CONSTRAINT "TreatmentStep_treatmentId_fkey" FOREIGN KEY ("treatmentId") REFERENCES "Treatment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "TreatmentStep_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_TreatmentStep" ("byCondition", "crew", "id", "minutes", "name", "needs", "position", "productId", "sameBay", "skill", "splittable", "stage", "treatmentId", "waitMax", "waitMin") SELECT "byCondition", "crew", "id", "minutes", "name", "needs", "position", "productId", "sameBay", "skill", "splittable", "stage", "treatmentId", "waitMax", "waitMin" FROM "TreatmentStep";
DROP TABLE "TreatmentStep";
ALTER TABLE "new_TreatmentStep" RENAME TO "TreatmentStep";
CREATE INDEX "TreatmentStep_treatmentId_position_idx" ON "TreatmentStep"("treatmentId", "position");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "ContainerSize_productId_idx" ON "ContainerSize"("productId");

-- CreateIndex
CREATE INDEX "ProductCode_productId_idx" ON "ProductCode"("productId");

-- CreateIndex
CREATE INDEX "SupplierOffer_productId_idx" ON "SupplierOffer"("productId");

-- CreateIndex
CREATE INDEX "SupplierOffer_supplierId_idx" ON "SupplierOffer"("supplierId");

-- CreateIndex
CREATE UNIQUE INDEX "Lot_number_key" ON "Lot"("number");

-- CreateIndex
CREATE INDEX "Lot_productId_idx" ON "Lot"("productId");

-- CreateIndex
CREATE INDEX "StockMove_lotId_centi_idx" ON "StockMove"("lotId", "centi");

-- CreateIndex
CREATE INDEX "StockMove_productId_idx" ON "StockMove"("productId");

-- CreateIndex
CREATE INDEX "StockMove_kind_at_idx" ON "StockMove"("kind", "at");

-- CreateIndex
CREATE INDEX "StockMove_jobId_position_idx" ON "StockMove"("jobId", "position");

-- CreateIndex
CREATE INDEX "StepDraw_productId_confirmedAt_idx" ON "StepDraw"("productId", "confirmedAt");

-- CreateIndex
CREATE INDEX "StepDraw_confirmedAt_idx" ON "StepDraw"("confirmedAt");

-- CreateIndex
CREATE UNIQUE INDEX "PurchaseOrder_number_key" ON "PurchaseOrder"("number");

-- CreateIndex
CREATE INDEX "PurchaseOrder_status_idx" ON "PurchaseOrder"("status");

-- CreateIndex
CREATE INDEX "PurchaseOrder_supplierId_idx" ON "PurchaseOrder"("supplierId");

-- CreateIndex
CREATE INDEX "PurchaseOrderLine_orderId_position_idx" ON "PurchaseOrderLine"("orderId", "position");

-- CreateIndex
CREATE INDEX "PurchaseOrderLine_productId_idx" ON "PurchaseOrderLine"("productId");

-- CreateIndex
CREATE INDEX "OrderMessage_orderId_at_idx" ON "OrderMessage"("orderId", "at");

-- The ledger is only appended to, whoever writes: these stand even where a program has a slip.
CREATE TRIGGER "StockMove_never_changed" BEFORE UPDATE ON "StockMove"
BEGIN
    SELECT RAISE(ABORT, 'a move of the ledger is never changed');
END;
CREATE TRIGGER "StockMove_never_deleted" BEFORE DELETE ON "StockMove"
BEGIN
    SELECT RAISE(ABORT, 'a move of the ledger is never deleted');
END;
CREATE TRIGGER "StockMove_never_below_nothing" BEFORE INSERT ON "StockMove" WHEN NEW."centi" < 0
BEGIN
    SELECT RAISE(ABORT, 'a lot never holds less than nothing')
    WHERE NEW."centi" + (SELECT coalesce(sum("centi"), 0) FROM "StockMove" WHERE "lotId" = NEW."lotId") < 0;
END;

-- AlterTable
ALTER TABLE "PurchaseOrder" ADD COLUMN "promisedOn" TEXT;

-- CreateTable
CREATE TABLE "ShelfPlan" (
    "productId" TEXT NOT NULL PRIMARY KEY,
    "offerId" TEXT NOT NULL,
    "basis" TEXT NOT NULL,
    "plannedOn" TEXT NOT NULL,
    "policy" JSONB
);

-- AlterTable
ALTER TABLE "Lot" ADD COLUMN "mixedFrom" JSONB;
ALTER TABLE "Lot" ADD COLUMN "waterParts" REAL;

-- CreateTable
CREATE TABLE "Dilution" (
    "productId" TEXT NOT NULL PRIMARY KEY,
    "concentrateId" TEXT NOT NULL,
    "waterParts" REAL NOT NULL,
    "lifeDays" INTEGER NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Dilution_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Dilution_concentrateId_fkey" FOREIGN KEY ("concentrateId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

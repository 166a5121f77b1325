-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "clockHours" INTEGER;
ALTER TABLE "Shop" ADD COLUMN "dateOrder" TEXT;
ALTER TABLE "Shop" ADD COLUMN "weekBegins" INTEGER;

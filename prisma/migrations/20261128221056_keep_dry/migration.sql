-- AlterTable
ALTER TABLE "Job" ADD COLUMN "coveredAt" INTEGER;
ALTER TABLE "Job" ADD COLUMN "coveredBy" TEXT;
ALTER TABLE "Job" ADD COLUMN "outsideC" REAL;

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "outsideUsual" JSONB;

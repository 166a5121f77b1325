-- AlterTable
ALTER TABLE "JobWords" ADD COLUMN "saysDropOffAt" INTEGER;
ALTER TABLE "JobWords" ADD COLUMN "saysPromisedAt" INTEGER;
ALTER TABLE "JobWords" ADD COLUMN "saysReadyAt" INTEGER;

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "language" TEXT NOT NULL DEFAULT 'en';

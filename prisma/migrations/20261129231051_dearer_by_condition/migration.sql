-- AlterTable
ALTER TABLE "MoneyRules" ADD COLUMN "wornPercent" TEXT NOT NULL DEFAULT '0';
ALTER TABLE "MoneyRules" ADD COLUMN "heavyPercent" TEXT NOT NULL DEFAULT '0';

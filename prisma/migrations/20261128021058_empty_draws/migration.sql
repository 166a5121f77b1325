-- A step from before there were recipes got the default of its time, which SQLite read as an empty text, and no list.
UPDATE "TreatmentStep" SET "draws" = '[]' WHERE "draws" = '';

CREATE TABLE IF NOT EXISTS "__EFMigrationsHistory" (
    "MigrationId" TEXT NOT NULL CONSTRAINT "PK___EFMigrationsHistory" PRIMARY KEY,
    "ProductVersion" TEXT NOT NULL
);

CREATE TABLE "Dances" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_Dances" PRIMARY KEY AUTOINCREMENT,
    "Revision" INTEGER NOT NULL,
    "Title" TEXT NOT NULL,
    "FoldedTitle" TEXT NOT NULL,
    "Choreographer" TEXT NOT NULL,
    "FoldedChoreographer" TEXT NOT NULL,
    "Level" TEXT NOT NULL,
    "Counts" INTEGER NULL,
    "Walls" INTEGER NULL,
    "Rhythm" TEXT NOT NULL,
    "SlowestTempo" REAL NULL,
    "FastestTempo" REAL NULL,
    "Songs" TEXT NOT NULL,
    "Errors" INTEGER NOT NULL,
    "Questions" INTEGER NOT NULL,
    "Warnings" INTEGER NOT NULL,
    "Fingerprint" TEXT NOT NULL,
    "TextDigest" TEXT NOT NULL,
    "FactsBy" TEXT NOT NULL,
    "Tags" TEXT NOT NULL,
    "FoldedTags" TEXT NOT NULL,
    "AddedAt" INTEGER NOT NULL,
    "SavedAt" INTEGER NOT NULL,
    "RemovedAt" INTEGER NULL,
    "Hand" TEXT NOT NULL,
    "LastVersion" INTEGER NOT NULL
);

CREATE TABLE "Settings" (
    "Name" TEXT NOT NULL CONSTRAINT "PK_Settings" PRIMARY KEY,
    "Value" TEXT NOT NULL
);

CREATE TABLE "Tracks" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_Tracks" PRIMARY KEY AUTOINCREMENT,
    "Title" TEXT NOT NULL,
    "FoldedTitle" TEXT NOT NULL,
    "Artist" TEXT NOT NULL,
    "FoldedArtist" TEXT NOT NULL,
    "Seconds" REAL NULL,
    "Tempo" REAL NULL,
    "FileName" TEXT NOT NULL,
    "Digest" TEXT NULL,
    "Ending" TEXT NOT NULL,
    "Bytes" INTEGER NOT NULL,
    "HeardBy" TEXT NOT NULL,
    "CorrectionsRevision" INTEGER NOT NULL,
    "Tags" TEXT NOT NULL,
    "FoldedTags" TEXT NOT NULL,
    "AddedAt" INTEGER NOT NULL,
    "RemovedAt" INTEGER NULL
);

CREATE TABLE "DanceTexts" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_DanceTexts" PRIMARY KEY,
    "Text" TEXT NOT NULL,
    CONSTRAINT "FK_DanceTexts_Dances_Key" FOREIGN KEY ("Key") REFERENCES "Dances" ("Key") ON DELETE CASCADE
);

CREATE TABLE "Versions" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_Versions" PRIMARY KEY AUTOINCREMENT,
    "DanceKey" INTEGER NOT NULL,
    "Number" INTEGER NOT NULL,
    "Name" TEXT NOT NULL,
    "SavedAt" INTEGER NOT NULL,
    "Hand" TEXT NOT NULL,
    "Text" TEXT NOT NULL,
    CONSTRAINT "FK_Versions_Dances_DanceKey" FOREIGN KEY ("DanceKey") REFERENCES "Dances" ("Key") ON DELETE CASCADE
);

CREATE TABLE "TrackContents" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_TrackContents" PRIMARY KEY,
    "Map" BLOB NULL,
    "Corrections" TEXT NOT NULL,
    CONSTRAINT "FK_TrackContents_Tracks_Key" FOREIGN KEY ("Key") REFERENCES "Tracks" ("Key") ON DELETE CASCADE
);

CREATE INDEX "IX_Dances_Fingerprint" ON "Dances" ("Fingerprint");

CREATE INDEX "IX_Dances_FoldedTitle" ON "Dances" ("FoldedTitle");

CREATE INDEX "IX_Dances_TextDigest" ON "Dances" ("TextDigest");

CREATE UNIQUE INDEX "IX_Tracks_Digest" ON "Tracks" ("Digest");

CREATE INDEX "IX_Tracks_FoldedTitle_FoldedArtist" ON "Tracks" ("FoldedTitle", "FoldedArtist");

CREATE UNIQUE INDEX "IX_Versions_DanceKey_Number" ON "Versions" ("DanceKey", "Number");

PRAGMA application_id = 1399026022;

CREATE VIRTUAL TABLE DanceWords USING fts5(title, choreographer, songs, tags, text, content='', contentless_delete=1, prefix='1 2 3');

CREATE VIRTUAL TABLE TrackWords USING fts5(title, artist, file, tags, content='', contentless_delete=1, prefix='1 2 3');

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128192239_First', '10.0.15');

ALTER TABLE "Dances" ADD "FileDigest" TEXT NULL;

ALTER TABLE "Dances" ADD "FileName" TEXT NULL;

ALTER TABLE "Dances" ADD "FileRevision" INTEGER NOT NULL DEFAULT 0;

CREATE UNIQUE INDEX "IX_Dances_FileName" ON "Dances" ("FileName");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128192251_LinkedFolder', '10.0.15');

ALTER TABLE "Versions" ADD "FactsBy" TEXT NOT NULL DEFAULT '';

ALTER TABLE "Versions" ADD "Fingerprint" TEXT NOT NULL DEFAULT '';

ALTER TABLE "Versions" ADD "Revision" INTEGER NULL;

ALTER TABLE "Dances" ADD "Effort" INTEGER NULL;

ALTER TABLE "Dances" ADD "Rank" INTEGER NULL;

ALTER TABLE "Dances" ADD "Feet" TEXT NOT NULL DEFAULT '';

CREATE TABLE "Classes" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_Classes" PRIMARY KEY AUTOINCREMENT,
    "Title" TEXT NOT NULL,
    "Level" TEXT NOT NULL,
    "Weekday" INTEGER NULL,
    "Starts" INTEGER NULL,
    "Minutes" INTEGER NOT NULL,
    "Place" TEXT NOT NULL,
    "People" INTEGER NULL,
    "Notes" TEXT NOT NULL,
    "EndedOn" INTEGER NULL
);

CREATE TABLE "People" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_People" PRIMARY KEY AUTOINCREMENT,
    "Name" TEXT NOT NULL,
    "Level" TEXT NOT NULL,
    "Needs" TEXT NOT NULL,
    "Notes" TEXT NOT NULL
);

CREATE TABLE "Evenings" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_Evenings" PRIMARY KEY AUTOINCREMENT,
    "Revision" INTEGER NOT NULL,
    "Title" TEXT NOT NULL,
    "Date" INTEGER NOT NULL,
    "Starts" INTEGER NOT NULL,
    "Minutes" INTEGER NOT NULL,
    "Place" TEXT NOT NULL,
    "ClassKey" INTEGER NULL,
    "Plan" TEXT NOT NULL,
    CONSTRAINT "FK_Evenings_Classes_ClassKey" FOREIGN KEY ("ClassKey") REFERENCES "Classes" ("Key") ON DELETE SET NULL
);

CREATE TABLE "Marks" (
    "ClassKey" INTEGER NOT NULL,
    "DanceKey" INTEGER NOT NULL,
    "Date" INTEGER NOT NULL,
    "Knowing" INTEGER NULL,
    CONSTRAINT "PK_Marks" PRIMARY KEY ("ClassKey", "DanceKey", "Date"),
    CONSTRAINT "FK_Marks_Classes_ClassKey" FOREIGN KEY ("ClassKey") REFERENCES "Classes" ("Key") ON DELETE CASCADE,
    CONSTRAINT "FK_Marks_Dances_DanceKey" FOREIGN KEY ("DanceKey") REFERENCES "Dances" ("Key") ON DELETE CASCADE
);

CREATE TABLE "Sessions" (
    "Key" INTEGER NOT NULL CONSTRAINT "PK_Sessions" PRIMARY KEY AUTOINCREMENT,
    "ClassKey" INTEGER NOT NULL,
    "Date" INTEGER NOT NULL,
    "Starts" INTEGER NULL,
    "Minutes" INTEGER NULL,
    "IsHeld" INTEGER NOT NULL,
    "People" INTEGER NULL,
    "HowItWent" TEXT NOT NULL,
    CONSTRAINT "FK_Sessions_Classes_ClassKey" FOREIGN KEY ("ClassKey") REFERENCES "Classes" ("Key") ON DELETE CASCADE
);

CREATE TABLE "PersonClasses" (
    "PersonKey" INTEGER NOT NULL,
    "ClassKey" INTEGER NOT NULL,
    CONSTRAINT "PK_PersonClasses" PRIMARY KEY ("PersonKey", "ClassKey"),
    CONSTRAINT "FK_PersonClasses_Classes_ClassKey" FOREIGN KEY ("ClassKey") REFERENCES "Classes" ("Key") ON DELETE CASCADE,
    CONSTRAINT "FK_PersonClasses_People_PersonKey" FOREIGN KEY ("PersonKey") REFERENCES "People" ("Key") ON DELETE CASCADE
);

CREATE TABLE "SessionItems" (
    "SessionKey" INTEGER NOT NULL,
    "Place" INTEGER NOT NULL,
    "Role" INTEGER NOT NULL,
    "DanceKey" INTEGER NULL,
    "Title" TEXT NOT NULL,
    "Revision" INTEGER NULL,
    "Minutes" INTEGER NULL,
    "Note" TEXT NOT NULL,
    CONSTRAINT "PK_SessionItems" PRIMARY KEY ("SessionKey", "Place"),
    CONSTRAINT "FK_SessionItems_Dances_DanceKey" FOREIGN KEY ("DanceKey") REFERENCES "Dances" ("Key") ON DELETE SET NULL,
    CONSTRAINT "FK_SessionItems_Sessions_SessionKey" FOREIGN KEY ("SessionKey") REFERENCES "Sessions" ("Key") ON DELETE CASCADE
);

CREATE INDEX "IX_Versions_DanceKey_Revision" ON "Versions" ("DanceKey", "Revision");

CREATE INDEX "IX_Evenings_ClassKey" ON "Evenings" ("ClassKey");

CREATE INDEX "IX_Evenings_Date" ON "Evenings" ("Date");

CREATE INDEX "IX_Marks_DanceKey" ON "Marks" ("DanceKey");

CREATE INDEX "IX_PersonClasses_ClassKey" ON "PersonClasses" ("ClassKey");

CREATE INDEX "IX_SessionItems_DanceKey_Revision" ON "SessionItems" ("DanceKey", "Revision");

CREATE INDEX "IX_SessionItems_SessionKey_DanceKey_Role_Revision" ON "SessionItems" ("SessionKey", "DanceKey", "Role", "Revision");

CREATE INDEX "IX_Sessions_ClassKey_Date" ON "Sessions" ("ClassKey", "Date");

CREATE INDEX "IX_Sessions_Date" ON "Sessions" ("Date");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261129014829_Book', '10.0.15');


-- A club as Scuff kept it in this form. It never changes: clubs like this lie on the machines of teachers.

PRAGMA journal_mode = WAL;

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

INSERT INTO Dances (Key, Revision, Title, FoldedTitle, Choreographer, FoldedChoreographer, Level, Counts, Walls, Rhythm, SlowestTempo, FastestTempo, Songs,
    Errors, Questions, Warnings, Fingerprint, TextDigest, FactsBy, Tags, FoldedTags, AddedAt, SavedAt, RemovedAt, Hand, LastVersion, FileName, FileDigest, FileRevision)
VALUES
    (1, 3, 'Harbour Box', 'harbour box', 'Ánna Pier', 'anna pier', 'beginner', 32, 4, 'waltz', 88.5, 96.0, 'Low Tide' || char(10) || 'High Tide',
        0, 1, 2, '1 step', 'd1', '1', 'easy' || char(10) || 'Monday', char(10) || 'easy' || char(10) || char(10) || 'monday' || char(10),
        1700000000000, 1750000000000, NULL, 'page', 2, 'Harbour Box.dance', 'abc123', 3),
    (4, 1, 'Tin Lantern', 'tin lantern', '', '', '', NULL, NULL, '', NULL, NULL, '', 0, 0, 0, '', 'd4', '1', '', '', 1700000000001, 1700000000001,
        1760000000000, 'import', 0, NULL, NULL, 0);

INSERT INTO DanceTexts VALUES (1, 'Harbour Box' || char(10) || '1 step' || char(10) || '🎵 Ærø'), (4, 'Tin Lantern');

INSERT INTO Versions (Key, DanceKey, Number, Name, SavedAt, Hand, Text) VALUES
    (1, 1, 1, '', 1700000000000, 'page', 'Harbour Box' || char(10) || '1 step'),
    (7, 1, 2, 'for the fair', 1740000000000, 'outside', 'Harbour Box' || char(10) || '1 step' || char(10) || '2 rock');

INSERT INTO Tracks (Key, Title, FoldedTitle, Artist, FoldedArtist, Seconds, Tempo, FileName, Digest, Ending, Bytes, HeardBy, CorrectionsRevision, Tags,
    FoldedTags, AddedAt, RemovedAt)
VALUES
    (2, 'Low Tide', 'low tide', 'The Net Menders', 'the net menders', 181.25, 92.0, 'low tide.mp3', NULL, '', 0, 'hearing 1', 2, 'slow',
        char(10) || 'slow' || char(10), 1700000000002, NULL);

INSERT INTO TrackContents VALUES (2, x'00ff10', 'bar 4 begins later');

INSERT INTO Settings VALUES ('.words', '1'), ('name', 'Harbour club'), ('theme', 'dark');

INSERT INTO DanceWords (rowid, title, choreographer, songs, tags, text) VALUES
    (1, 'harbour box', 'anna pier', 'low tide high tide', 'easy monday', 'harbour box 1 step'),
    (4, 'tin lantern', '', '', '', 'tin lantern');

INSERT INTO TrackWords (rowid, title, artist, file, tags) VALUES (2, 'low tide', 'the net menders', 'low tide mp3', 'slow');

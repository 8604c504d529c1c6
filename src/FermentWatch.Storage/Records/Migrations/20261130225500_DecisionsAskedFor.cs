using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <summary>
    /// Rounds keep the decisions they asked for. For some hours the migration before this one added the column too: the table is written
    /// anew so that a file with the column and one without come out alike. Within the inner query the name is the table's column where
    /// there is one, else the empty text beside it.
    /// </summary>
    public partial class DecisionsAskedFor : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""
                CREATE TABLE "round_decided" (
                    "Date" TEXT NOT NULL CONSTRAINT "PK_round" PRIMARY KEY,
                    "DueAt" INTEGER NOT NULL,
                    "OpenedAt" INTEGER NOT NULL,
                    "Missed" INTEGER NOT NULL,
                    "TasteAsked" TEXT NOT NULL DEFAULT '',
                    "DecideAsked" TEXT NOT NULL DEFAULT ''
                );
                INSERT INTO round_decided (Date, DueAt, OpenedAt, Missed, TasteAsked, DecideAsked)
                SELECT known.Date, known.DueAt, known.OpenedAt, known.Missed, known.TasteAsked,
                    (SELECT DecideAsked FROM round AS same WHERE same.Date = known.Date)
                FROM (SELECT Date, DueAt, OpenedAt, Missed, TasteAsked FROM round) AS known, (SELECT '' AS DecideAsked) AS otherwise;
                DROP TABLE "round";
                ALTER TABLE "round_decided" RENAME TO "round";
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "DecideAsked",
                table: "round");
        }
    }
}

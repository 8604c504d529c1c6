using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class PhToolAndWhatWasDone : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "Handled",
                table: "observation",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "PhTool",
                table: "household",
                type: "TEXT",
                nullable: false,
                defaultValue: "Nothing");

            migrationBuilder.AddColumn<string>(
                name: "TastingAgainFrom",
                table: "household",
                type: "TEXT",
                nullable: true);

            // What stands on record says what this household measures with; the page lets it say otherwise any day.
            migrationBuilder.Sql(
                """
                UPDATE "household" SET "PhTool" = COALESCE(
                    (SELECT CASE "Method" WHEN 'Strip' THEN 'Strips' ELSE "Method" END FROM "observation"
                     WHERE "kind" = 'ph' AND "VoidedAt" IS NULL
                     ORDER BY CASE "Method" WHEN 'Meter' THEN 1 WHEN 'Probe' THEN 2 ELSE 3 END LIMIT 1), 'Nothing')
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "Handled",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "PhTool",
                table: "household");

            migrationBuilder.DropColumn(
                name: "TastingAgainFrom",
                table: "household");
        }
    }
}

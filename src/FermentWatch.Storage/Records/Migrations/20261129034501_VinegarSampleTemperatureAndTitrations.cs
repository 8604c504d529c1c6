using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class VinegarSampleTemperatureAndTitrations : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<double>(
                name: "BaseMillilitres",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "BaseNormality",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "PercentLactic",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "SampleCelsius",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "SampleMillilitres",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Vinegar",
                table: "jar",
                type: "TEXT",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "BaseMillilitres",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "BaseNormality",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "PercentLactic",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "SampleCelsius",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "SampleMillilitres",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "Vinegar",
                table: "jar");
        }
    }
}

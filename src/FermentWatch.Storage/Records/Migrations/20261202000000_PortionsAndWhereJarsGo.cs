using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class PortionsAndWhereJarsGo : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "GivenTo",
                table: "observation",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "TakenFraction",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "TakenKilograms",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "TakenLitres",
                table: "observation",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Went",
                table: "observation",
                type: "INTEGER",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "GivenTo",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "TakenFraction",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "TakenKilograms",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "TakenLitres",
                table: "observation");

            migrationBuilder.DropColumn(
                name: "Went",
                table: "observation");
        }
    }
}

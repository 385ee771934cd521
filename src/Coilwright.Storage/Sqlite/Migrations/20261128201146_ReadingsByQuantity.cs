using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class ReadingsByQuantity : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "IX_Readings_BatchId_Quantity",
                table: "Readings",
                columns: new[] { "BatchId", "Quantity" });

            migrationBuilder.Sql("PRAGMA user_version = 4;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_Readings_BatchId_Quantity",
                table: "Readings");
        }
    }
}

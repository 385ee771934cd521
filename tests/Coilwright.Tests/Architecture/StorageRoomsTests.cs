using System.Text.RegularExpressions;

namespace Coilwright.Tests.Architecture;

/// <summary>Tables and repositories name no database: a second one is migrations and four functions, and nothing else.</summary>
public sealed partial class StorageRoomsTests
{
    [Fact]
    public void Model_and_records_name_no_database()
    {
        string[] files =
        [
            .. Directory.EnumerateFiles(RepositoryFiles.PathOf("src", "Coilwright.Storage", "Model"), "*.cs"),
            .. Directory.EnumerateFiles(RepositoryFiles.PathOf("src", "Coilwright.Storage", "Records"), "*.cs"),
        ];

        Assert.True(files.Length > 15, "the two folders were found");
        Assert.Empty(files.SelectMany(file => Named(Path.GetFileName(file), File.ReadAllLines(file))));
    }

    [Theory]
    [InlineData("using Microsoft.Data.Sqlite;")]
    [InlineData("await context.Database.ExecuteSqlRawAsync(\"PRAGMA secure_delete = ON\", cancel);")]
    [InlineData("SELECT * FROM PieceEvents WHERE json_extract(Payload, '$.name') = {name}")]
    [InlineData("private readonly SqliteDatabase _database;")]
    [InlineData(".UseNpgsql(connection)")]
    public void A_planted_line_is_found(string line) => Assert.Single(Named("Planted.cs", ["namespace Planted;", line]));

    private static IEnumerable<string> Named(string file, string[] lines) =>
        lines
            .Select((line, at) => (line, at))
            .Where(one => OneDatabase().IsMatch(one.line))
            .Select(one => $"{file}:{one.at + 1}: {one.line.Trim()}");

    [GeneratedRegex("sqlite|npgsql|postgre|PRAGMA|json_extract|FromSql|ExecuteSql", RegexOptions.IgnoreCase)]
    private static partial Regex OneDatabase();
}

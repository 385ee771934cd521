using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Tests;

/// <summary>Shop files as older versions wrote them, from the SQL in the folder of outside data.</summary>
internal static class OldShop
{
    private static readonly string s_folder = Path.Combine(AppContext.BaseDirectory, "Reference", "shops");

    /// <summary>Versions of which a file with pieces is kept; the ones before had none.</summary>
    public static IEnumerable<int> WithPieces => Enumerable.Range(3, ShopFile.SchemaVersion - 3);

    /// <summary>What the program of version 6 answered: a question at the command line and its answer, in order.</summary>
    public static IReadOnlyList<(string Question, string Answer)> Answers =>
        [
            .. File.ReadAllText(Path.Combine(s_folder, "answers.txt"))
                .Split("\n> ")
                .Select(block => block.TrimStart('>', ' ').Split('\n', 2))
                .Select(block => (block[0], block[1].TrimEnd('\n'))),
        ];

    /// <summary>Writes the file of a version.</summary>
    public static async Task WriteAsync(int version, string path, CancellationToken cancel)
    {
        string sql = await File.ReadAllTextAsync(Path.Combine(s_folder, FormattableString.Invariant($"version-{version}.sql")), cancel);
        await using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        await connection.OpenAsync(cancel);
        await using SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // constants of the tests
        command.CommandText = sql;
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(cancel);
    }
}

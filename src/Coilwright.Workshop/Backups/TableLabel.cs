namespace Coilwright.Workshop.Backups;

/// <summary>What the rows of a shop's tables are called by people.</summary>
public static class TableLabel
{
    private static readonly Dictionary<string, string> s_labels = new(StringComparer.Ordinal)
    {
        ["Shop"] = "the shop itself",
        ["Revisions"] = "revisions of recipes",
        ["Batches"] = "batches",
        ["BatchLimits"] = "limits of batches",
        ["BatchSummaries"] = "summaries of batches",
        ["BatchEvents"] = "events of batches",
        ["Readings"] = "readings of coils",
        ["RoomTemperatures"] = "room temperatures",
        ["Machines"] = "entries of winders",
        ["Spools"] = "spools",
        ["SpoolReadings"] = "readings of spools",
        ["Pieces"] = "pieces",
        ["OpenPieces"] = "pieces begun",
        ["PieceParts"] = "parts of pieces",
        ["PieceEvents"] = "events of pieces",
        ["PieceReadings"] = "readings of pieces",
        ["Baskets"] = "baskets",
        ["BathReadings"] = "readings of baths",
        ["InkMixes"] = "mixes of ink",
        ["StepUndos"] = "steps taken back",
        ["Customers"] = "customers",
        ["Learning"] = "records of what the shop learnt",
        ["Rules"] = "rules of the shop",
        ["Accounts"] = "accounts",
        ["AccountEvents"] = "records of accounts",
        ["Sessions"] = "sessions",
        ["Tokens"] = "tokens",
        ["SecretMarks"] = "marks of secret recipes",
    };

    /// <summary>Names of tables that have a label.</summary>
    public static IReadOnlyCollection<string> Known => s_labels.Keys;

    /// <summary>The label of a table; its name where it has none.</summary>
    public static string Of(string table) => s_labels.GetValueOrDefault(table, table);
}

namespace Coilwright.Workshop.Backups;

/// <summary>What a shop's file holds, in numbers: enough to tell one state of a shop from another.</summary>
/// <param name="Name">The shop's name.</param>
/// <param name="CreatedUtc">When the shop was made; with the name it tells one shop from another.</param>
/// <param name="SchemaVersion">Version of its records.</param>
/// <param name="NewestRecordUtc">Time of the newest record of any kind; null for a shop without any.</param>
/// <param name="Rows">Rows of each table by its name.</param>
public sealed record ShopContents(
    string Name,
    DateTimeOffset CreatedUtc,
    int SchemaVersion,
    DateTimeOffset? NewestRecordUtc,
    IReadOnlyDictionary<string, long> Rows
)
{
    /// <summary>Rows of all tables together.</summary>
    public long AllRows => Rows.Values.Sum();

    /// <summary>True when both are states of one shop.</summary>
    public bool IsSameShop(ShopContents other) => Name == other.Name && CreatedUtc == other.CreatedUtc;

    /// <summary>Tables whose rows are not as many as in another state, each with how many more it has here.</summary>
    public IReadOnlyList<(string Table, long More)> Against(ShopContents other) =>
        [
            .. Rows
                .Keys.Union(other.Rows.Keys, StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
                .Select(table => (table, Rows.GetValueOrDefault(table) - other.Rows.GetValueOrDefault(table)))
                .Where(one => one.Item2 != 0),
        ];
}

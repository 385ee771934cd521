using System.Globalization;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Backups;

/// <summary>Backups in words, for pages and for the terminal.</summary>
public static class BackupWords
{
    /// <summary>A moment at the shop.</summary>
    public static string Time(DateTimeOffset utc, TimeZoneInfo zone) => ShopTime.Words(utc, zone);

    /// <summary>A size, for example "3.2 MB" (of 1,000,000 bytes).</summary>
    public static string Size(long bytes) =>
        bytes switch
        {
            < 1000 => string.Create(CultureInfo.InvariantCulture, $"{bytes} bytes"),
            < 1_000_000 => string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e3:0.#} kB"),
            < 1_000_000_000 => string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0.#} MB"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e9:0.#} GB"),
        };

    /// <summary>How many rows it holds.</summary>
    public static string Holds(ShopContents shop) =>
        $"{Count(shop.AllRows, "row")} in {Count(shop.Rows.Count(one => one.Value > 0), "table")}";

    /// <summary>Time of the newest record.</summary>
    public static string Newest(ShopContents shop, TimeZoneInfo zone) =>
        shop.NewestRecordUtc is { } newest ? Time(newest, zone) : "none yet";

    /// <summary>How far a shop is ahead of another state of it.</summary>
    public static string Difference(ShopContents shop, ShopContents other, TimeZoneInfo zone)
    {
        IReadOnlyList<(string Table, long More)> rows = shop.Against(other);
        if (rows.Count == 0)
        {
            return "with as many records";
        }

        string newest =
            shop.NewestRecordUtc > (other.NewestRecordUtc ?? DateTimeOffset.MinValue)
                ? $"its newest record is of {Newest(shop, zone)}, the backup's of {Newest(other, zone)}; "
                : "";
        return newest + "against the backup it has " + string.Join(", ", rows.Select(Row));
    }

    private static string Row((string Table, long More) row) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{TableLabel.Of(row.Table)}: {Math.Abs(row.More):#,##0} {(row.More > 0 ? "more" : "fewer")}"
        );

    private static string Count(long count, string one) =>
        string.Create(CultureInfo.InvariantCulture, $"{count:#,##0} {one}{(count == 1 ? "" : "s")}");
}

using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Storage.Backups;

/// <summary>Names of backups: the shop's file, the time in UTC, and an ending of our own, for example "shop-2026-03-02T120000Z".</summary>
internal static partial class BackupName
{
    public const string Ending = ".coilwright.zip";

    private const string Stamp = "yyyy-MM-dd'T'HHmmss'Z'";

    /// <summary>A name in a folder that is still free.</summary>
    public static string Free(string folder, string shopPath, DateTimeOffset nowUtc)
    {
        string stem = $"{Path.GetFileNameWithoutExtension(shopPath)}-{Time(nowUtc)}";
        string path = Path.Combine(folder, stem + Ending);
        for (int more = 2; File.Exists(path); more++)
        {
            path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{stem}-{more}{Ending}"));
        }

        return path;
    }

    /// <summary>A moment as it stands in a name.</summary>
    public static string Time(DateTimeOffset utc) => utc.UtcDateTime.ToString(Stamp, CultureInfo.InvariantCulture);

    /// <summary>True for a name that a backup of this shop's file gets; another is never listed or removed.</summary>
    public static bool IsOf(string shopPath, string backupPath)
    {
        string name = Path.GetFileName(backupPath),
            stem = Path.GetFileNameWithoutExtension(shopPath) + "-";
        return name.StartsWith(stem, StringComparison.Ordinal) && AfterStem().IsMatch(name[stem.Length..]);
    }

    [GeneratedRegex(@"^\d{4}-\d{2}-\d{2}T\d{6}Z(-\d+)?\.coilwright\.zip$")]
    private static partial Regex AfterStem();
}

using System.Globalization;

namespace Coilwright.Workshop.Backups;

/// <summary>When a backup is due, which are kept, and when a person is told.</summary>
public static class BackupRules
{
    /// <summary>Backups of a folder that are kept unless a person says otherwise: about a month of days.</summary>
    public const int UsualKeep = 30;

    /// <summary>How often one is made while the shop is served.</summary>
    public static readonly TimeSpan Every = TimeSpan.FromDays(1);

    /// <summary>Age of the newest from which a person is told.</summary>
    public static readonly TimeSpan Old = TimeSpan.FromDays(2);

    /// <summary>True when there is none, or the newest is a day old; also when it is a day ahead of a clock that was set back.</summary>
    public static bool IsDue(DateTimeOffset? newestUtc, DateTimeOffset nowUtc) =>
        newestUtc is not { } newest || (nowUtc - newest).Duration() >= Every;

    /// <summary>Those beyond the newest so many; never the one just written, whatever the clock says.</summary>
    /// <param name="backups">Backups of one folder, readable ones; in any order.</param>
    /// <param name="keep">How many stay, 1 or more.</param>
    /// <param name="justWritten">Path of the one just written.</param>
    public static IReadOnlyList<BackupFile> Surplus(IEnumerable<BackupFile> backups, int keep, string justWritten) =>
        [
            .. backups
                .Where(one => one.Manifest is not null && one.Path != justWritten)
                .OrderByDescending(one => one.Manifest!.TimeUtc)
                .Skip(Math.Max(keep, 1) - 1),
        ];

    /// <summary>What a person is told on Today; empty when all is well.</summary>
    /// <param name="newestUtc">The newest backup of any folder; null for none.</param>
    /// <param name="nowUtc">Now.</param>
    /// <param name="onAnotherVolume">True when a folder for backups lies on another volume than the shop.</param>
    public static IReadOnlyList<string> Warnings(DateTimeOffset? newestUtc, DateTimeOffset nowUtc, bool onAnotherVolume)
    {
        List<string> warnings = [];
        if (newestUtc is not { } newest)
        {
            warnings.Add("There is no backup of this shop yet.");
        }
        else if (nowUtc - newest > Old)
        {
            warnings.Add(
                string.Create(CultureInfo.InvariantCulture, $"The newest backup is {Math.Floor((nowUtc - newest).TotalDays):0} days old.")
            );
        }

        if (!onAnotherVolume)
        {
            warnings.Add("No backup lies on another disk than the shop: if this disk breaks, both are gone.");
        }

        return warnings;
    }
}

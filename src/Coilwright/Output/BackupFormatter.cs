using System.Globalization;
using Coilwright.Application.Backups;
using Coilwright.Workshop.Backups;

namespace Coilwright.Output;

/// <summary>Backups, what restoring one would do, and whether a file can be trusted, for the terminal.</summary>
internal static class BackupFormatter
{
    public static void Write(TextWriter output, BackupOutcome outcome)
    {
        BackupManifest manifest = outcome.Written.Manifest!;
        output.WriteLine($"Backup written and read back: {outcome.Written.Path}");
        output.WriteLine($"  {manifest.Shop.Name}: {BackupWords.Holds(manifest.Shop)}, {BackupWords.Size(outcome.Written.Bytes)}");
        foreach (BackupFile old in outcome.Removed)
        {
            output.WriteLine($"Removed an older one: {old.Path}");
        }
    }

    public static void Write(TextWriter output, RestorePlan plan, TimeZoneInfo zone)
    {
        ShopContents shop = plan.Manifest.Shop;
        output.WriteLine(
            $"Backup of {shop.Name}, made {BackupWords.Time(plan.Manifest.TimeUtc, zone)} by Coilwright {plan.Manifest.Program}"
        );
        output.WriteLine($"  holds {BackupWords.Holds(shop)}; newest record {BackupWords.Newest(shop, zone)}");
        WriteRows(output, shop);
        if (plan.IsTaken)
        {
            output.WriteLine($"At {plan.Target} now: {Present(plan, zone)}");
        }
    }

    public static void WriteWouldDo(TextWriter output, RestorePlan plan, bool refused)
    {
        foreach (string file in plan.Beside)
        {
            output.WriteLine($"Lies there too and would be put aside: {file}");
        }

        output.WriteLine(
            refused
                ? $"This would be refused: {plan.Target} exists. With --put-aside it gets another name first. Nothing was written."
                : $"This would make {plan.Target}. Nothing was written."
        );
    }

    public static void WriteDone(TextWriter output, RestorePlan plan, IReadOnlyList<string> aside)
    {
        foreach (string file in aside)
        {
            output.WriteLine($"Put aside: {file}");
        }

        output.WriteLine($"The shop is in {plan.Target}");
    }

    public static void Write(TextWriter output, ShopCheck check, TimeZoneInfo zone)
    {
        output.WriteLine(check.Path);
        if (check.Contents is { } shop)
        {
            output.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {shop.Name}, records of version {shop.SchemaVersion}; newest record {BackupWords.Newest(shop, zone)}"
                )
            );
            WriteRows(output, shop);
        }

        if (check.LogBytes > 0)
        {
            output.WriteLine(
                $"  write-ahead log beside it: {BackupWords.Size(check.LogBytes)}; it holds the newest entries: never copy the file alone"
            );
        }

        foreach (ShopFinding finding in check.Findings)
        {
            output.WriteLine($"NOT SOUND: {finding.What}");
            output.WriteLine($"  What to do: {finding.ToDo}.");
        }

        foreach (string note in check.Notes)
        {
            output.WriteLine($"Note: {note}.");
        }

        if (check.IsSound)
        {
            string summaries =
                check.SummariesCompared > 0
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $" Summaries of batches held against their records: {check.SummariesCompared:#,##0}."
                    )
                    : "";
            string sound = check.PagesRead
                ? "Sound: every page and index was read, and every record finds the ones it names."
                : "Sound as far as it can be seen from here: every table was counted, and every guard of the records is there.";
            output.WriteLine(sound + summaries);
        }
    }

    private static void WriteRows(TextWriter output, ShopContents shop)
    {
        foreach ((string table, long rows) in shop.Rows.Where(one => one.Value > 0))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {rows, 9:#,##0} {TableLabel.Of(table)}"));
        }
    }

    private static string Present(RestorePlan plan, TimeZoneInfo zone)
    {
        if (plan.Present is not { } present)
        {
            return "a file that cannot be read as a shop: " + plan.PresentComplaint;
        }

        return present.IsSameShop(plan.Manifest.Shop)
            ? $"the same shop, {BackupWords.Difference(present, plan.Manifest.Shop, zone)}"
            : $"another shop, {present.Name}: {BackupWords.Holds(present)}";
    }
}

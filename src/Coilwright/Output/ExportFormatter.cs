using System.Globalization;
using Coilwright.Application.Exports;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.Exports;

namespace Coilwright.Output;

/// <summary>Exports and what came of bringing one in, for the terminal.</summary>
internal static class ExportFormatter
{
    public static void Write(TextWriter output, ExportOutcome outcome)
    {
        output.WriteLine($"Export written: {outcome.Folder}");
        output.WriteLine($"  {outcome.Manifest.ShopName}: {Holds(outcome.Manifest)}, {BackupWords.Size(outcome.Bytes)}");
        WriteFiles(output, outcome.Manifest);
    }

    public static void Write(TextWriter output, ImportOutcome outcome, string shop, bool dryRun)
    {
        if (outcome.Manifest is { } manifest)
        {
            output.WriteLine($"Export of {manifest.ShopName}: {Holds(manifest)}");
            WriteFiles(output, manifest);
        }

        foreach (string note in outcome.Notes)
        {
            output.WriteLine($"Note: {note}.");
        }

        if (outcome.IsDone)
        {
            output.WriteLine($"The shop is in {shop}");
        }
        else if (dryRun && outcome.Problems.Count == 0)
        {
            output.WriteLine($"All of it can be read. This would fill {shop}. Nothing was written.");
        }
    }

    private static void WriteFiles(TextWriter output, ExportManifest manifest)
    {
        foreach (ExportedFile file in manifest.Files.Where(file => file.Records > 0))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {file.Records, 9:#,##0} {file.Name}"));
        }
    }

    private static string Holds(ExportManifest manifest) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{manifest.Records:#,##0} records in {manifest.Files.Count(file => file.Records > 0)} files, "
                + $"{manifest.Documents.Count} documents"
        );
}

using Coilwright.Application.Shops;
using Coilwright.Formats.Exports;
using Coilwright.Storage;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Exports;

namespace Coilwright.Application.Exports;

/// <summary>Brings an export into a shop that is new or empty: all of it or nothing.</summary>
/// <param name="clock">The clock.</param>
public sealed class ImportShop(TimeProvider clock)
{
    /// <summary>Progress is told after so many records.</summary>
    private const int Step = 500;

    /// <summary>Files and folders of an export that are no table.</summary>
    private static readonly string[] s_others = [ManifestFile.Name, "recipes", "machines", "rules"];

    /// <summary>Reads all of it first, and only then fills the shop.</summary>
    /// <param name="folder">The export.</param>
    /// <param name="shopPath">File of the shop; made when it is not there.</param>
    /// <param name="dryRun">True to read and check alone.</param>
    /// <param name="progress">Told how many records were read, of how many; null for nobody.</param>
    /// <param name="cancel">Gives up; the shop stays empty.</param>
    /// <exception cref="ShopRefusedException">The shop's file cannot be used.</exception>
    /// <exception cref="ExportException">The shop holds records.</exception>
    public async Task<ImportOutcome> RunAsync(
        string folder,
        string shopPath,
        bool dryRun,
        IProgress<(int Done, int Of)>? progress,
        CancellationToken cancel
    )
    {
        bool isNew = !await OpenedShop.ExistsAsync(shopPath, cancel).ConfigureAwait(false);
        if (!isNew)
        {
            await RefuseFullAsync(shopPath, cancel).ConfigureAwait(false);
        }

        ImportProblems problems = new();
        ExportManifest? manifest = await Task.Run(() => Check(folder, problems, progress, cancel), cancel).ConfigureAwait(false);
        if (manifest is null || problems.Count > 0 || dryRun)
        {
            return new ImportOutcome(manifest, problems.All, problems.Notes, IsDone: false);
        }

        await FillAsync((folder, manifest), (shopPath, isNew), progress, cancel).ConfigureAwait(false);
        return new ImportOutcome(manifest, [], problems.Notes, IsDone: true);
    }

    private async Task RefuseFullAsync(string shopPath, CancellationToken cancel)
    {
        OpenedShop shop = await OpenedShop.OpenAsync(shopPath, clock, cancel).ConfigureAwait(false);
        await using (shop.ConfigureAwait(false))
        {
            if (!await shop.Records.Transfer.IsEmptyAsync(cancel).ConfigureAwait(false))
            {
                throw new ExportException(
                    $"the shop in {shopPath} holds records already; an export is brought into a shop that is new or empty"
                );
            }
        }
    }

    private static ExportManifest? Check(
        string folder,
        ImportProblems problems,
        IProgress<(int Done, int Of)>? progress,
        CancellationToken cancel
    )
    {
        ExportReader reader = new(folder, problems);
        if (reader.Text(ManifestFile.Name) is not { } text || ManifestFile.Read(text, problems) is not { } manifest)
        {
            return null;
        }

        RowCheck check = new(problems);
        long done = 0;
        foreach (ExportTable table in ExportTables.All)
        {
            long records = 0;
            foreach (ExportRow row in reader.Rows(table))
            {
                records++;
                if (++done % Step == 0)
                {
                    cancel.ThrowIfCancellationRequested();
                    progress?.Report(((int)done, (int)manifest.Records));
                }

                if (row.Row is { } values)
                {
                    check.Look(table, row.Line, values);
                    if (ShopTransfer.Complaint(table, values) is { } complaint)
                    {
                        problems.Add(table.File, row.Line, "says", complaint);
                    }
                }
            }

            CheckCount(table, records, manifest, problems);
        }

        NoteOthers(folder, manifest, problems);
        return manifest;
    }

    private static void CheckCount(ExportTable table, long records, ExportManifest manifest, ImportProblems problems)
    {
        long told = manifest.Files.Single(file => file.Name == table.File).Records;
        if (records != told)
        {
            problems.Add(
                table.File,
                0,
                "",
                "the file does not hold as many records as were written; it was cut off or changed",
                FormattableString.Invariant($"{records}"),
                FormattableString.Invariant($"{told}, as {ManifestFile.Name} says")
            );
        }
    }

    private static void NoteOthers(string folder, ExportManifest manifest, ImportProblems problems)
    {
        foreach (string name in ExportHashes.Changed(folder, manifest))
        {
            problems.Note($"{name} is not as it was written: somebody changed it since");
        }

        HashSet<string> known = [.. s_others, .. ExportTables.All.Select(table => table.File)];
        foreach (
            string name in Directory
                .EnumerateFileSystemEntries(folder)
                .Select(Path.GetFileName)
                .OfType<string>()
                .Order(StringComparer.Ordinal)
        )
        {
            if (!known.Contains(name))
            {
                problems.Note($"{name} is no part of the export and is left aside");
            }
        }
    }

    private async Task FillAsync(
        (string Folder, ExportManifest Manifest) export,
        (string Path, bool IsNew) target,
        IProgress<(int Done, int Of)>? progress,
        CancellationToken cancel
    )
    {
        (string shopPath, bool isNew) = target;
        ExportManifest manifest = export.Manifest;
        OpenedShop shop = isNew
            ? await OpenedShop.CreateAsync(shopPath, manifest.ShopName, clock, cancel).ConfigureAwait(false)
            : await OpenedShop.OpenAsync(shopPath, clock, cancel).ConfigureAwait(false);
        bool filled = false;
        try
        {
            await using (shop.ConfigureAwait(false))
            {
                await FillAsync(export.Folder, shop, manifest, cancel).ConfigureAwait(false);
                filled = true;
                await SummariseAsync(shop.Use<BatchSummaries>(), progress, cancel).ConfigureAwait(false);
            }
        }
        finally
        {
            if (isNew && !filled)
            {
                await ShopConnection.RemoveEmptyAsync(shopPath).ConfigureAwait(false);
            }
        }
    }

    /// <summary>Makes what the program keeps in short of each batch; given up, the rest is made when it is asked for.</summary>
    private static async Task SummariseAsync(BatchSummaries summaries, IProgress<(int Done, int Of)>? progress, CancellationToken cancel)
    {
        int done = 0;
        (int kept, int missing) = (1, 1);
        while (kept > 0 && missing > 0)
        {
            (kept, missing) = await summaries.CatchUpAsync(BatchSummaries.AtOnce, cancel).ConfigureAwait(false);
            done += kept;
            progress?.Report((done, done + missing));
        }
    }

    private static async Task FillAsync(string folder, OpenedShop shop, ExportManifest manifest, CancellationToken cancel)
    {
        ImportProblems problems = new();
        ExportReader reader = new(folder, problems);
        IShopFilling filling = await shop.Records.Transfer.FillAsync(manifest.ShopName, manifest.CreatedUtc, cancel).ConfigureAwait(false);
        await using (filling.ConfigureAwait(false))
        {
            foreach (ExportTable table in ExportTables.All)
            {
                IEnumerable<object?[]> rows = reader.Rows(table).Select(row => row.Row).OfType<object?[]>();
                await filling.AddAsync(table, rows.ToAsyncEnumerable(), cancel).ConfigureAwait(false);
            }

            if (problems.Count > 0)
            {
                throw new ExportException($"{folder} was changed while it was read; nothing was brought in");
            }

            await filling.CommitAsync(cancel).ConfigureAwait(false);
        }
    }
}

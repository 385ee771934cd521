using Coilwright.Formats.Exports;
using Coilwright.Workshop.Exports;

namespace Coilwright.Application.Exports;

/// <summary>An export that was written.</summary>
/// <param name="Folder">Where.</param>
/// <param name="Manifest">What it holds.</param>
/// <param name="Bytes">Length of its files together.</param>
public sealed record ExportOutcome(string Folder, ExportManifest Manifest, long Bytes);

/// <summary>Writes everything that a shop holds into a folder, as JSON and CSV.</summary>
/// <param name="transfer">The shop.</param>
public sealed class ExportShop(IShopTransfer transfer)
{
    /// <summary>Progress is told after so many records.</summary>
    private const int Step = 500;

    /// <summary>Writes it; the folder has its name only when all of it was written.</summary>
    /// <param name="folder">A folder that is empty or not there yet.</param>
    /// <param name="progress">Told how many records were written, of how many; null for nobody.</param>
    /// <param name="cancel">Gives up; nothing half-written is left.</param>
    /// <exception cref="ExportException">The folder holds something, or cannot be written.</exception>
    public async Task<ExportOutcome> RunAsync(string folder, IProgress<(int Done, int Of)>? progress, CancellationToken cancel)
    {
        string at = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)),
            making = $"{at}.making-{Guid.NewGuid():N}";
        Refuse(at);
        try
        {
            Directory.CreateDirectory(making);
            ExportManifest manifest = await WriteAsync(making, progress, cancel).ConfigureAwait(false);
            long bytes = new DirectoryInfo(making).EnumerateFiles("*", SearchOption.AllDirectories).Sum(file => file.Length);
            if (Directory.Exists(at))
            {
                Directory.Delete(at); // refuses when something came into it meanwhile
            }

            Directory.Move(making, at);
            return new ExportOutcome(at, manifest, bytes);
        }
        catch (Exception failure) when (failure is UnauthorizedAccessException or (IOException and not ExportException))
        {
            throw new ExportException($"{at}: no export could be written here: {failure.Message} Nothing half-written was left.", failure);
        }
        finally
        {
            Clear(making);
        }
    }

    private static void Refuse(string at)
    {
        if (File.Exists(at))
        {
            throw new ExportException($"{at} is a file; an export needs a folder of its own, empty or new");
        }

        if (Directory.Exists(at) && Directory.EnumerateFileSystemEntries(at).Any())
        {
            throw new ExportException($"{at} is not empty, and nothing is ever written over files; take a folder that is empty or new");
        }
    }

    private async Task<ExportManifest> WriteAsync(string folder, IProgress<(int Done, int Of)>? progress, CancellationToken cancel)
    {
        IShopSnapshot shop = await transfer.LookAsync(cancel).ConfigureAwait(false);
        await using (shop.ConfigureAwait(false))
        {
            long of = 0,
                done = 0;
            foreach (ExportTable table in ExportTables.All)
            {
                of += await shop.CountAsync(table, cancel).ConfigureAwait(false);
            }

            ExportWriter writer = new(folder);
            foreach (ExportTable table in ExportTables.All)
            {
                await writer.WriteAsync(table, shop.RowsAsync(table, cancel), Count, cancel).ConfigureAwait(false);
            }

            return await writer.FinishAsync(shop.Name, shop.CreatedUtc, cancel).ConfigureAwait(false);

            void Count()
            {
                if (++done % Step == 0)
                {
                    progress?.Report(((int)done, (int)of));
                }
            }
        }
    }

    /// <summary>Takes away what was being made; it has a name that nobody takes for an export.</summary>
    private static void Clear(string making)
    {
        try
        {
            if (Directory.Exists(making))
            {
                Directory.Delete(making, recursive: true);
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // no reason to hide why the export failed
        }
    }
}

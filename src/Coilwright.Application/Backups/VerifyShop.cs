using Coilwright.Application.Shops;
using Coilwright.Storage;
using Coilwright.Storage.Backups;
using Coilwright.Workshop;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Application.Backups;

/// <summary>Says whether a shop's file can be trusted, and makes what follows from its records again where it is wrong.</summary>
/// <param name="clock">The clock.</param>
public sealed class VerifyShop(TimeProvider clock)
{
    private const string Repair = "coilwright verify --repair makes it again from the records";

    /// <summary>A note names no more of them.</summary>
    private const int MostNamed = 20;

    /// <summary>Reads all of it, holds what follows from records against them, and changes nothing.</summary>
    /// <param name="path">The file.</param>
    /// <param name="progress">Told how many batches were looked at, of how many; null for nobody.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="ShopRefusedException">It is not there, is no shop, or was written by a newer version.</exception>
    public Task<ShopCheck> CheckAsync(string path, IProgress<(int Done, int Of)>? progress, CancellationToken cancel) =>
        GuardAsync(async () =>
        {
            ShopCheck file = await ShopVerification.CheckAsync(path, cancel).ConfigureAwait(false);
            if (!file.IsSound)
            {
                return file with { IsDamaged = true };
            }

            return file.Contents is { SchemaVersion: ShopFile.SchemaVersion }
                ? await ShopVerification
                    .LookAsync(path, async records => With(file, await AuditAsync(records, progress, cancel).ConfigureAwait(false)), cancel)
                    .ConfigureAwait(false)
                : file with
                {
                    Notes =
                    [
                        "its records are of an older version and are brought up to date when it is opened; nothing follows from them yet",
                    ],
                };
        });

    /// <summary>Makes again what follows from records and is wrong or missing; nothing else is touched.</summary>
    /// <param name="path">The file; sound but for what follows from its records.</param>
    /// <param name="progress">Told how many batches were looked at, of how many; null for nobody.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>What was done, each in a sentence.</returns>
    /// <exception cref="ShopRefusedException">It is not there, is no shop, or was written by a newer version.</exception>
    public async Task<IReadOnlyList<string>> RepairAsync(string path, IProgress<(int Done, int Of)>? progress, CancellationToken cancel)
    {
        OpenedShop shop = await OpenedShop.OpenAsync(path, clock, cancel).ConfigureAwait(false);
        await using (shop.ConfigureAwait(false))
        {
            (SummaryAuditResult summaries, IReadOnlyList<PieceRecord> pieces) = await AuditAsync(shop.Records, progress, cancel)
                .ConfigureAwait(false);
            List<string> done = [];
            BatchSummaries maker = shop.Use<BatchSummaries>();
            BatchRecord[] again = [.. summaries.Unsound.Select(one => one.Batch), .. summaries.JudgedOtherwise, .. summaries.Missing];
            HashSet<Guid> missing = [.. summaries.Missing.Select(batch => batch.Id)];
            foreach (BatchRecord batch in again)
            {
                bool kept = await maker.RemakeAsync(batch, cancel).ConfigureAwait(false);
                string what = missing.Contains(batch.Id) ? "made, it was missing" : "made again";
                done.Add(kept ? $"summary of batch {batch.Name}: {what}" : $"summary of batch {batch.Name}: it could not be kept");
            }

            await shop.Records.Pieces.ListAgainAsync([.. pieces.Select(piece => piece.Id)], cancel).ConfigureAwait(false);
            done.AddRange(pieces.Select(piece => $"piece {piece.Serial}: listed among those in the shop as its events say"));
            return done;
        }
    }

    private async Task<(SummaryAuditResult Summaries, IReadOnlyList<PieceRecord> Pieces)> AuditAsync(
        IShopRecords records,
        IProgress<(int Done, int Of)>? progress,
        CancellationToken cancel
    ) =>
        (
            await new SummaryAudit(records, clock).RunAsync(progress, cancel).ConfigureAwait(false),
            await records.Pieces.MislistedAsync(cancel).ConfigureAwait(false)
        );

    private static ShopCheck With(ShopCheck file, (SummaryAuditResult Summaries, IReadOnlyList<PieceRecord> Pieces) audit) =>
        file with
        {
            SummariesCompared = audit.Summaries.Compared,
            Findings =
            [
                .. audit.Summaries.Unsound.Select(one => new ShopFinding(
                    $"the summary of batch {one.Batch.Name} is not what its records say: {one.What}",
                    Repair
                )),
                .. audit.Pieces.Select(piece => new ShopFinding(
                    $"the list of pieces in the shop is wrong about {piece.Serial}, by its events",
                    Repair
                )),
            ],
            Notes =
            [
                .. file.Notes,
                .. Note(audit.Summaries.Missing, "have no summary yet; it is made when a page asks for it, or in the background"),
                .. Note(audit.Summaries.JudgedOtherwise, "have the verdicts of their day: a cause was found in the shop since"),
            ],
        };

    private static IEnumerable<string> Note(IReadOnlyList<BatchRecord> batches, string what)
    {
        if (batches.Count > 0)
        {
            string names = string.Join(", ", batches.Take(MostNamed).Select(batch => batch.Name));
            string more = batches.Count > MostNamed ? FormattableString.Invariant($" and {batches.Count - MostNamed} more") : "";
            yield return $"batches that {what}: {names}{more}";
        }
    }

    private static async Task<T> GuardAsync<T>(Func<Task<T>> checking)
    {
        try
        {
            return await checking().ConfigureAwait(false);
        }
        catch (ShopFileException refused)
        {
            throw new ShopRefusedException(refused.Message, refused);
        }
    }
}

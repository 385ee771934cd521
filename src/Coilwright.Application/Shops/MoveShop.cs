using Coilwright.Storage;
using Coilwright.Storage.Moves;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Backups;

namespace Coilwright.Application.Shops;

/// <summary>What came of a move.</summary>
/// <param name="Name">The shop's name.</param>
/// <param name="Tables">Every table with its rows and the hash of what is in them, found to be the same in both.</param>
public sealed record MoveOutcome(string Name, IReadOnlyList<MovedTable> Tables)
{
    /// <summary>Rows of all tables together.</summary>
    public long Rows => Tables.Sum(one => one.Rows);
}

/// <summary>Copies a shop from one database into another, file or server, and compares before it says that it is done.</summary>
/// <param name="clock">The clock.</param>
public sealed class MoveShop(TimeProvider clock)
{
    /// <summary>Copies; the shop that is read stays as it is.</summary>
    /// <param name="from">Connection of the shop.</param>
    /// <param name="to">Connection of the target: nothing yet, or a shop without records.</param>
    /// <param name="progress">Told how many rows were copied, of how many; null for nobody.</param>
    /// <param name="cancel">Gives up; nothing is kept.</param>
    /// <exception cref="ShopRefusedException">
    /// One of the two cannot be used, the target holds records, or a row does not go over.
    /// </exception>
    public async Task<MoveOutcome> RunAsync(string from, string to, IProgress<(int Done, int Of)>? progress, CancellationToken cancel)
    {
        try
        {
            ShopRecords source = await ShopConnection.OpenAsync(from, cancel).ConfigureAwait(false);
            await using (source.ConfigureAwait(false))
            {
                string name = await source.ShopNameAsync(cancel).ConfigureAwait(false);
                bool isNew = !await ShopConnection.ExistsAsync(to, cancel).ConfigureAwait(false);
                return new MoveOutcome(name, await FillAsync(source, (to, isNew, name), progress, cancel).ConfigureAwait(false));
            }
        }
        catch (ShopFileException refused)
        {
            throw new ShopRefusedException(refused.Message, refused);
        }
    }

    private async Task<IReadOnlyList<MovedTable>> FillAsync(
        ShopRecords source,
        (string Connection, bool IsNew, string Name) to,
        IProgress<(int Done, int Of)>? progress,
        CancellationToken cancel
    )
    {
        bool filled = false;
        try
        {
            ShopRecords target = to.IsNew
                ? await ShopConnection.CreateAsync(to.Connection, to.Name, clock, cancel).ConfigureAwait(false)
                : await ShopConnection.OpenAsync(to.Connection, cancel).ConfigureAwait(false);
            await using (target.ConfigureAwait(false))
            {
                IReadOnlyList<MovedTable> moved = await ShopMove.RunAsync(source, target, progress, cancel).ConfigureAwait(false);
                filled = true;
                return moved;
            }
        }
        finally
        {
            if (to.IsNew && !filled)
            {
                await ShopConnection.RemoveEmptyAsync(to.Connection).ConfigureAwait(false);
            }
        }
    }
}

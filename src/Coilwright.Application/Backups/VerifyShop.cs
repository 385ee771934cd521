using Coilwright.Application.Shops;
using Coilwright.Storage;
using Coilwright.Storage.Backups;
using Coilwright.Workshop.Backups;

namespace Coilwright.Application.Backups;

/// <summary>Says whether a shop's file can be trusted.</summary>
public sealed class VerifyShop
{
    /// <summary>Reads all of it and changes nothing.</summary>
    /// <exception cref="ShopRefusedException">It is not there, is no shop, or was written by a newer version.</exception>
    public Task<ShopCheck> CheckAsync(string path, CancellationToken cancel) => GuardAsync(ShopVerification.CheckAsync(path, cancel));

    private static async Task<ShopCheck> GuardAsync(Task<ShopCheck> checking)
    {
        try
        {
            return await checking.ConfigureAwait(false);
        }
        catch (ShopFileException refused)
        {
            throw new ShopRefusedException(refused.Message, refused);
        }
    }
}

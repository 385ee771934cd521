using Coilwright.Application.Composition;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Application.Shops;

/// <summary>A shop whose file is open, put together with everything that can be done in it.</summary>
public sealed class OpenedShop : IAsyncDisposable
{
    private readonly ShopRecords _records;
    private readonly ServiceProvider _services;

    private OpenedShop(ShopRecords records, TimeProvider time)
    {
        _records = records;
        _services = new ServiceCollection().AddCoilwright(records, time).BuildServiceProvider();
    }

    /// <summary>The shop's records.</summary>
    public IShopRecords Records => _records;

    /// <summary>The shop's rules, by their names.</summary>
    public ShopServices Services => Use<ShopServices>();

    /// <summary>What a person does in this shop.</summary>
    public T Use<T>()
        where T : notnull => _services.GetRequiredService<T>();

    /// <summary>Opens a shop's file.</summary>
    /// <exception cref="ShopRefusedException">There is no such file, or it is no shop this program can read.</exception>
    public static Task<OpenedShop> OpenAsync(string path, TimeProvider time, CancellationToken cancel) =>
        GuardAsync(ShopFile.OpenAsync(path, cancel), time);

    /// <summary>Makes a new shop.</summary>
    /// <exception cref="ShopRefusedException">There is a file already, or none can be written there.</exception>
    public static Task<OpenedShop> CreateAsync(string path, string shopName, TimeProvider time, CancellationToken cancel) =>
        GuardAsync(ShopFile.CreateAsync(path, shopName, time, cancel), time);

    /// <summary>Closes the file.</summary>
    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync().ConfigureAwait(false);
        await _records.DisposeAsync().ConfigureAwait(false);
    }

    private static async Task<OpenedShop> GuardAsync(Task<ShopRecords> opening, TimeProvider time)
    {
        try
        {
            return new OpenedShop(await opening.ConfigureAwait(false), time);
        }
        catch (ShopFileException refused)
        {
            throw new ShopRefusedException(refused.Message, refused);
        }
    }
}

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

    /// <summary>False where a new shop may be made: no file, or a database in which there is nothing.</summary>
    /// <exception cref="ShopRefusedException">The server of a shop's database cannot be reached, or refuses.</exception>
    public static async Task<bool> ExistsAsync(string connection, CancellationToken cancel)
    {
        try
        {
            return await ShopConnection.ExistsAsync(connection, cancel).ConfigureAwait(false);
        }
        catch (ShopFileException refused)
        {
            throw new ShopRefusedException(refused.Message, refused);
        }
    }

    /// <summary>Opens a shop by its connection: a file's path, or where its database is.</summary>
    /// <exception cref="ShopRefusedException">There is no such file or database, or it is no shop this program can read.</exception>
    public static Task<OpenedShop> OpenAsync(string path, TimeProvider time, CancellationToken cancel) =>
        GuardAsync(() => ShopConnection.OpenAsync(path, cancel), time);

    /// <summary>Makes a new shop.</summary>
    /// <exception cref="ShopRefusedException">There is a file already, or none can be written there.</exception>
    public static Task<OpenedShop> CreateAsync(string path, string shopName, TimeProvider time, CancellationToken cancel) =>
        GuardAsync(() => ShopConnection.CreateAsync(path, shopName, time, cancel), time);

    /// <summary>Closes the file.</summary>
    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync().ConfigureAwait(false);
        await _records.DisposeAsync().ConfigureAwait(false);
    }

    private static async Task<OpenedShop> GuardAsync(Func<Task<ShopRecords>> open, TimeProvider time)
    {
        try
        {
            return new OpenedShop(await open().ConfigureAwait(false), time);
        }
        catch (ShopFileException refused)
        {
            throw new ShopRefusedException(refused.Message, refused);
        }
    }
}

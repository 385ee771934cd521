namespace Coilwright.Workshop.Exports;

/// <summary>What a store must do so that a shop can be taken out of it and brought into it whole.</summary>
public interface IShopTransfer
{
    /// <summary>True when the shop holds no record of any kind.</summary>
    Task<bool> IsEmptyAsync(CancellationToken cancel);

    /// <summary>A look at the shop of one moment; nobody is kept from writing.</summary>
    Task<IShopSnapshot> LookAsync(CancellationToken cancel);

    /// <summary>Begins to fill an empty shop: one unit of work, of which nothing is kept unless it is committed.</summary>
    /// <param name="name">Name of the shop.</param>
    /// <param name="createdUtc">When it was made.</param>
    /// <param name="cancel">Gives up.</param>
    Task<IShopFilling> FillAsync(string name, DateTimeOffset createdUtc, CancellationToken cancel);
}

/// <summary>A shop as it was at one moment.</summary>
public interface IShopSnapshot : IAsyncDisposable
{
    /// <summary>Name of the shop.</summary>
    string Name { get; }

    /// <summary>When it was made.</summary>
    DateTimeOffset CreatedUtc { get; }

    /// <summary>How many rows a table has.</summary>
    Task<long> CountAsync(ExportTable table, CancellationToken cancel);

    /// <summary>Its rows in their order, one after the other.</summary>
    IAsyncEnumerable<object?[]> RowsAsync(ExportTable table, CancellationToken cancel);
}

/// <summary>A shop that is being filled.</summary>
public interface IShopFilling : IAsyncDisposable
{
    /// <summary>Adds rows, in order of entry.</summary>
    Task AddAsync(ExportTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancel);

    /// <summary>Makes what follows from the records, and keeps everything.</summary>
    Task CommitAsync(CancellationToken cancel);
}

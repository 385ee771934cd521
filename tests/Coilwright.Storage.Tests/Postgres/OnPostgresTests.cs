using Npgsql;

namespace Coilwright.Storage.Tests.Postgres;

/// <summary>The tests of records, on a server.</summary>
public sealed class ShopRecordsOnPostgresTests : ShopRecordsTests
{
    private protected override Task<TempShop> StartAsync() => TempShop.OnServerAsync();

    private protected override string Sql(string sql) =>
        string.Join(' ', sql.Split(' ').Select(word => char.IsUpper(word[0]) && word.Any(char.IsLower) ? $"\"{word}\"" : word));

    private protected override bool IsGuard(Exception refused) =>
        refused is PostgresException { SqlState: PostgresErrorCodes.IntegrityConstraintViolation };
}

/// <summary>The tests of sets, on a server.</summary>
public sealed class SetStorageOnPostgresTests : SetStorageTests
{
    private protected override Task<TempShop> StartAsync() => TempShop.OnServerAsync();
}

/// <summary>The tests of events taken back, on a server.</summary>
public sealed class PieceUndoOnPostgresTests : PieceUndoTests
{
    private protected override Task<TempShop> StartAsync() => TempShop.OnServerAsync();
}

/// <summary>The tests of what charts read, on a server.</summary>
public sealed class ChartReadingsOnPostgresTests : ChartReadingsTests
{
    private protected override Task<TempShop> StartAsync() => TempShop.OnServerAsync();
}

#pragma warning disable CA2100 // statements are made of names of the program's own tables, quoted
using System.Data.Common;
using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Exports;
using Coilwright.Workshop.Pieces;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Sqlite;

/// <summary>A shop that is being filled, in one unit of work.</summary>
/// <param name="context">Open; it is closed with this.</param>
/// <param name="alone">The unit of work.</param>
internal sealed class ShopFilling(ShopContext context, IDbContextTransaction alone) : IShopFilling
{
    public async Task AddAsync(ExportTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancel)
    {
        await using DbCommand command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = alone.GetDbTransaction();
        string columns = string.Join(", ", table.Columns.Select(column => TransferRow.Quoted(column.Property))),
            values = string.Join(", ", table.Columns.Select((_, at) => Name(at)));
        command.CommandText = $"INSERT INTO {TransferRow.Quoted(table.Records)} ({columns}) VALUES ({values})";
        for (int at = 0; at < table.Columns.Count; at++)
        {
            DbParameter parameter = command.CreateParameter();
            parameter.ParameterName = Name(at);
            command.Parameters.Add(parameter);
        }

        await foreach (object?[] row in rows.WithCancellation(cancel))
        {
            for (int at = 0; at < row.Length; at++)
            {
                command.Parameters[at].Value = TransferRow.Parameter(row[at]);
            }

            await command.ExecuteNonQueryAsync(cancel);
        }
    }

    public async Task CommitAsync(CancellationToken cancel)
    {
        IReadOnlyList<PieceRecord> inShop = await PieceRows.MislistedAsync(context, cancel); // none is listed yet
        context.AddRange(inShop.Select(piece => new ShopContext.OpenPieceRow(piece.Id)));
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
    }

    public async ValueTask DisposeAsync()
    {
        await alone.DisposeAsync();
        await context.DisposeAsync();
    }

    private static string Name(int at) => FormattableString.Invariant($"@p{at}");
}

#pragma warning disable CA2100 // statements are made of names of the program's own tables, quoted
using System.Data.Common;
using System.Globalization;
using System.Runtime.CompilerServices;
using Coilwright.Storage.Model;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop.Backups;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Coilwright.Storage.Moves;

/// <summary>A table of the model with its columns, read and written as values that both databases have.</summary>
internal sealed class TableOfShop
{
    private readonly (string Column, Type Kind)[] _columns;
    private readonly string _order;

    private TableOfShop(IEntityType entity)
    {
        Name = entity.GetTableName()!;
        IsName = entity.ClrType == typeof(ShopContext.ShopRow);
        IsCounted = entity.FindProperty(ShopContext.EntryOrder) is not null;
        _columns = [.. entity.GetProperties().Select(one => (one.GetColumnName(), KindOf(one)))];
        _order = string.Join(", ", entity.FindPrimaryKey()!.Properties.Select(one => TransferRow.Quoted(one.GetColumnName())));
    }

    /// <summary>Its name in the database.</summary>
    public string Name { get; }

    /// <summary>True for the one row that says whose shop this is.</summary>
    public bool IsName { get; }

    /// <summary>True where the database counts the order of entry.</summary>
    public bool IsCounted { get; }

    /// <summary>Every table, each after those that its rows name.</summary>
    public static IReadOnlyList<TableOfShop> All(ShopContext context)
    {
        List<IEntityType> left = [.. context.Model.GetEntityTypes().OrderBy(one => one.GetTableName(), StringComparer.Ordinal)],
            ordered = [];
        while (left.Count > 0)
        {
            IEntityType next = left.First(one =>
                one.GetForeignKeys().All(key => key.PrincipalEntityType == one || ordered.Contains(key.PrincipalEntityType))
            );
            left.Remove(next);
            ordered.Add(next);
        }

        return [.. ordered.Select(entity => new TableOfShop(entity))];
    }

    public async Task<long> CountAsync(DbTransaction within, CancellationToken cancel)
    {
        await using DbCommand command = Command(within, $"SELECT count(*) FROM {TransferRow.Quoted(Name)}");
        return Convert.ToInt64(await command.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture);
    }

    /// <summary>Takes the name of the new shop away, in whose place the old one's comes.</summary>
    public async Task ClearNameAsync(DbTransaction within, CancellationToken cancel)
    {
        if (IsName)
        {
            await using DbCommand command = Command(within, $"DELETE FROM {TransferRow.Quoted(Name)}");
            await command.ExecuteNonQueryAsync(cancel);
        }
    }

    /// <summary>Copies every row, and hashes what was read.</summary>
    public async Task<MovedTable> CopyAsync(DbTransaction from, DbTransaction to, CopyCount count, CancellationToken cancel)
    {
        string columns = string.Join(", ", _columns.Select(one => TransferRow.Quoted(one.Column))),
            values = string.Join(", ", _columns.Select((_, at) => Parameter(at)));
        await using DbCommand insert = Command(to, $"INSERT INTO {TransferRow.Quoted(Name)} ({columns}) VALUES ({values})");
        for (int at = 0; at < _columns.Length; at++)
        {
            DbParameter parameter = insert.CreateParameter();
            parameter.ParameterName = Parameter(at);
            insert.Parameters.Add(parameter);
        }

        using RowHash hash = new();
        long rows = 0;
        await foreach (object?[] row in RowsAsync(from, cancel))
        {
            for (int at = 0; at < row.Length; at++)
            {
                insert.Parameters[at].Value = row[at] ?? DBNull.Value;
            }

            await insert.ExecuteNonQueryAsync(cancel);
            hash.Add(row);
            rows++;
            count.Next();
        }

        return new MovedTable(Name, rows, hash.Done());
    }

    /// <summary>Hashes every row.</summary>
    public async Task<MovedTable> HashAsync(DbTransaction within, CancellationToken cancel)
    {
        using RowHash hash = new();
        long rows = 0;
        await foreach (object?[] row in RowsAsync(within, cancel))
        {
            hash.Add(row);
            rows++;
        }

        return new MovedTable(Name, rows, hash.Done());
    }

    private async IAsyncEnumerable<object?[]> RowsAsync(DbTransaction within, [EnumeratorCancellation] CancellationToken cancel)
    {
        string columns = string.Join(", ", _columns.Select(one => TransferRow.Quoted(one.Column)));
        await using DbCommand command = Command(within, $"SELECT {columns} FROM {TransferRow.Quoted(Name)} ORDER BY {_order}");
        await using DbDataReader reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            object?[] row = new object?[_columns.Length];
            for (int at = 0; at < row.Length; at++)
            {
                row[at] = await reader.IsDBNullAsync(at, cancel) ? null : Value(_columns[at].Kind, reader, at);
            }

            yield return row;
        }
    }

    private static string Parameter(int at) => FormattableString.Invariant($"@p{at}");

    private static DbCommand Command(DbTransaction within, string sql)
    {
        DbCommand command = within.Connection!.CreateCommand();
        command.CommandText = sql;
        command.Transaction = within;
        return command;
    }

    /// <summary>What stands in the column, behind a conversion of the model.</summary>
    private static Type KindOf(IProperty property)
    {
        Type kind = property.GetTypeMapping().Converter?.ProviderClrType ?? property.ClrType;
        return Nullable.GetUnderlyingType(kind) ?? kind;
    }

    private static object Value(Type kind, DbDataReader reader, int at) =>
        Type.GetTypeCode(kind) switch
        {
            TypeCode.String => reader.GetString(at),
            TypeCode.Double => reader.GetDouble(at),
            TypeCode.Boolean => reader.GetBoolean(at),
            TypeCode.Int32 or TypeCode.Int64 => Convert.ToInt64(reader.GetValue(at), CultureInfo.InvariantCulture),
            _ => reader.GetGuid(at),
        };
}

using System.Data.Common;
using System.Globalization;
using Coilwright.Storage.Model;
using Coilwright.Workshop.Exports;

namespace Coilwright.Storage.Sqlite;

/// <summary>Values of exported rows, as the database has them and back.</summary>
internal static class TransferRow
{
    /// <summary>How times stand in the file.</summary>
    private const string Iso = "O";

    public static string Quoted(string name) => $"\"{name}\"";

    /// <summary>The row that a reader stands at.</summary>
    public static object?[] Read(ExportTable table, DbDataReader reader)
    {
        object?[] row = new object?[table.Columns.Count];
        for (int at = 0; at < row.Length; at++)
        {
            row[at] = reader.IsDBNull(at) ? null : Value(table.Columns[at].Kind, reader, at);
        }

        return row;
    }

    /// <summary>A value as a parameter of a statement.</summary>
    public static object Parameter(object? value) =>
        value switch
        {
            null => DBNull.Value,
            DateTimeOffset time => time.UtcDateTime.ToString(Iso, CultureInfo.InvariantCulture),
            _ => value,
        };

    public static BatchEventRow BatchEvent(ExportTable table, IReadOnlyList<object?> row) =>
        new()
        {
            Id = Of<Guid>(table, row, "id"),
            BatchId = Of<Guid>(table, row, "batch"),
            Kind = Of<string>(table, row, "kind"),
            Tag = Of<string>(table, row, "tag"),
            Spool = Of<string>(table, row, "spool"),
            Undoes = row[table.PlaceOf("undoes")] as Guid?,
            Payload = Of<string>(table, row, "says"),
            Person = Of<string>(table, row, "person"),
            TimeUtc = Of<DateTimeOffset>(table, row, "time"),
        };

    public static PieceEventRow PieceEvent(ExportTable table, IReadOnlyList<object?> row) =>
        new()
        {
            Id = Of<Guid>(table, row, "id"),
            PieceId = Of<Guid>(table, row, "piece"),
            Kind = Of<string>(table, row, "kind"),
            BasketId = row[table.PlaceOf("basket")] as Guid?,
            MixId = row[table.PlaceOf("mix")] as Guid?,
            CustomerId = row[table.PlaceOf("customer")] as Guid?,
            About = row[table.PlaceOf("about")] as Guid?,
            Payload = Of<string>(table, row, "says"),
            Person = Of<string>(table, row, "person"),
            TimeUtc = Of<DateTimeOffset>(table, row, "time"),
        };

    private static T Of<T>(ExportTable table, IReadOnlyList<object?> row, string column) => (T)row[table.PlaceOf(column)]!;

    private static object Value(ExportKind kind, DbDataReader reader, int at) =>
        kind switch
        {
            ExportKind.Id => reader.GetGuid(at),
            ExportKind.Number => reader.GetDouble(at),
            ExportKind.Count => reader.GetInt64(at),
            ExportKind.Flag => reader.GetBoolean(at),
            ExportKind.Time => Backups.ShopReader.Moment(reader.GetString(at)),
            _ => reader.GetString(at),
        };
}

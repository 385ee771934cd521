using System.Data.Common;
using System.Globalization;
using Coilwright.Workshop.ControlCharts;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Sqlite;

/// <summary>Readings for charts: only the columns a chart draws, newest first, and no further back than it must.</summary>
internal static class SqliteChartReadings
{
    /// <summary>The index on a batch carries the order of entry with it, so that this walks backwards without sorting.</summary>
    private const string NewestFirst = """
        SELECT "EntryOrder", "Id", "Tag", "Si", "TemperatureC", "AtHz", "Person", "TimeUtc", "Supersedes", "Withdraws"
        FROM "Readings" WHERE "BatchId" = $batch AND "Quantity" = $quantity ORDER BY "EntryOrder" DESC
        """;

    private const string Ends = """
        SELECT
          (SELECT MIN("EntryOrder") FROM "Readings" WHERE "BatchId" = $batch),
          (SELECT MAX("EntryOrder") FROM "Readings" WHERE "BatchId" = $batch)
        """;

    /// <summary>One reading in force for each coil of the query.</summary>
    public static async Task<IReadOnlyList<ChartReading>> ReadAsync(string connectionString, ChartQuery query, CancellationToken cancel)
    {
        await using SqliteConnection connection = new(connectionString);
        await connection.OpenAsync(cancel);
        ChartWalk walk = new(query);
        foreach ((Guid batch, long first, long last) in await InOrderAsync(connection, query, cancel))
        {
            if (walk.NeedsNoMore(first, last))
            {
                break;
            }

            if (!query.First || last >= query.FromOrder)
            {
                Walk(connection, walk, query.Quantity, batch, cancel);
            }
        }

        return walk.Coils();
    }

    private static void Walk(SqliteConnection connection, ChartWalk walk, string quantity, Guid batch, CancellationToken cancel)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = NewestFirst;
        command.Parameters.AddWithValue("$batch", Text(batch));
        command.Parameters.AddWithValue("$quantity", quantity);
        using SqliteDataReader reader = command.ExecuteReader();
        walk.Open(batch);
        while (reader.Read() && !walk.PastAll(reader.GetInt64(0)))
        {
            walk.Take(RowOf(reader));
            cancel.ThrowIfCancellationRequested();
        }
    }

    /// <summary>The row that a reader of the columns above stands at.</summary>
    public static ChartRow RowOf(DbDataReader row) =>
        new(
            row.GetInt64(0),
            row.GetGuid(1),
            row.GetString(2),
            Number(row, 3),
            Number(row, 4),
            Number(row, 5),
            row.GetString(6),
            DateTimeOffset.Parse(
                row.GetString(7),
                CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal
            ),
            row.IsDBNull(8) ? null : row.GetGuid(8),
            row.GetBoolean(9)
        );

    private static double? Number(DbDataReader row, int column) => row.IsDBNull(column) ? null : row.GetDouble(column);

    /// <summary>An id as it stands in the file.</summary>
    private static string Text(Guid id) => id.ToString().ToUpperInvariant();

    private static async Task<IReadOnlyList<(Guid Batch, long First, long Last)>> InOrderAsync(
        SqliteConnection connection,
        ChartQuery query,
        CancellationToken cancel
    )
    {
        await using SqliteCommand command = connection.CreateCommand();
        command.CommandText = Ends;
        SqliteParameter batchId = command.Parameters.Add("$batch", SqliteType.Text);
        List<(Guid Batch, long First, long Last)> batches = [];
        foreach (Guid batch in query.Batches)
        {
            batchId.Value = Text(batch);
            await using SqliteDataReader reader = await command.ExecuteReaderAsync(cancel);
            if (await reader.ReadAsync(cancel) && !await reader.IsDBNullAsync(0, cancel))
            {
                batches.Add((batch, reader.GetInt64(0), reader.GetInt64(1)));
            }
        }

        return query.First ? [.. batches.OrderBy(batch => batch.First)] : [.. batches.OrderByDescending(batch => batch.Last)];
    }
}

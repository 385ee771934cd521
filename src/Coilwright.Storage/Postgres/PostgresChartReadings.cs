using Coilwright.Storage.Sqlite;
using Coilwright.Workshop.ControlCharts;
using Npgsql;

namespace Coilwright.Storage.Postgres;

/// <summary>Readings for charts: only the columns a chart draws, newest first, and no further back than it must.</summary>
internal static class PostgresChartReadings
{
    private const string NewestFirst = """
        SELECT "EntryOrder", "Id", "Tag", "Si", "TemperatureC", "AtHz", "Person", "TimeUtc", "Supersedes", "Withdraws"
        FROM "Readings" WHERE "BatchId" = $1 AND "Quantity" = $2 ORDER BY "EntryOrder" DESC
        """;

    private const string Ends = """
        SELECT "BatchId", MIN("EntryOrder"), MAX("EntryOrder") FROM "Readings" WHERE "BatchId" = ANY($1) GROUP BY "BatchId"
        """;

    /// <summary>One reading in force for each coil of the query.</summary>
    public static async Task<IReadOnlyList<ChartReading>> ReadAsync(NpgsqlDataSource source, ChartQuery query, CancellationToken cancel)
    {
        await using NpgsqlConnection connection = await source.OpenConnectionAsync(cancel);
        ChartWalk walk = new(query);
        foreach ((Guid batch, long first, long last) in await InOrderAsync(connection, query, cancel))
        {
            if (walk.NeedsNoMore(first, last))
            {
                break;
            }

            if (!query.First || last >= query.FromOrder)
            {
                await WalkAsync(connection, walk, query.Quantity, batch, cancel);
            }
        }

        return walk.Coils();
    }

    private static async Task WalkAsync(NpgsqlConnection connection, ChartWalk walk, string quantity, Guid batch, CancellationToken cancel)
    {
        await using NpgsqlCommand command = new(NewestFirst, connection);
        command.Parameters.Add(new NpgsqlParameter { Value = batch });
        command.Parameters.Add(new NpgsqlParameter { Value = quantity });
        await using NpgsqlDataReader reader = await command.ExecuteReaderAsync(cancel);
        walk.Open(batch);
        while (await reader.ReadAsync(cancel) && !walk.PastAll(reader.GetInt64(0)))
        {
            walk.Take(SqliteChartReadings.RowOf(reader));
        }
    }

    private static async Task<IReadOnlyList<(Guid Batch, long First, long Last)>> InOrderAsync(
        NpgsqlConnection connection,
        ChartQuery query,
        CancellationToken cancel
    )
    {
        await using NpgsqlCommand command = new(Ends, connection);
        command.Parameters.Add(new NpgsqlParameter { Value = query.Batches.ToArray() });
        await using NpgsqlDataReader reader = await command.ExecuteReaderAsync(cancel);
        List<(Guid Batch, long First, long Last)> batches = [];
        while (await reader.ReadAsync(cancel))
        {
            batches.Add((reader.GetGuid(0), reader.GetInt64(1), reader.GetInt64(2)));
        }

        return query.First ? [.. batches.OrderBy(batch => batch.First)] : [.. batches.OrderByDescending(batch => batch.Last)];
    }
}

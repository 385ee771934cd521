using System.Data.Common;
using Coilwright.Storage.Model;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Coilwright.Storage.Sqlite;

/// <summary>
/// How a shop's file is opened: foreign keys held, every commit on the disk before it returns, and patience with a second writer.
/// </summary>
internal static class ShopContextOptions
{
    /// <summary>How long a writer waits for another before it gives up, s.</summary>
    private const int PatienceSeconds = 20;

    /// <summary>For work: read and write.</summary>
    public static string Working(string path) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = Path.GetFullPath(path),
            Mode = SqliteOpenMode.ReadWrite,
            ForeignKeys = true,
            DefaultTimeout = PatienceSeconds,
        }.ToString();

    /// <summary>For a look that changes nothing.</summary>
    /// <param name="path">The file.</param>
    /// <param name="alone">True when nobody has it open: then not even a lock or a log file is made.</param>
    public static string Looking(string path, bool alone) =>
        new SqliteConnectionStringBuilder
        {
            DataSource = new Uri(Path.GetFullPath(path)).AbsoluteUri + (alone ? "?immutable=1" : ""),
            Mode = SqliteOpenMode.ReadOnly,
            DefaultTimeout = PatienceSeconds,
            Pooling = false,
        }.ToString();

    public static DbContextOptions<ShopContext> For(string connectionString) =>
        new DbContextOptionsBuilder<ShopContext>().UseSqlite(connectionString).AddInterceptors(new Durability()).Options;

    private sealed class Durability : DbConnectionInterceptor
    {
        private const string Pragmas = "PRAGMA synchronous = FULL; PRAGMA busy_timeout = 20000;";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using DbCommand command = connection.CreateCommand();
            command.CommandText = Pragmas;
            command.ExecuteNonQuery();
        }

        public override async Task ConnectionOpenedAsync(
            DbConnection connection,
            ConnectionEndEventData eventData,
            CancellationToken cancellationToken = default
        )
        {
            await using DbCommand command = connection.CreateCommand();
            command.CommandText = Pragmas;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }

    /// <summary>Lets the migrations tool see the model; opens nothing.</summary>
    internal sealed class ForTheTool : IDesignTimeDbContextFactory<ShopContext>
    {
        public ShopContext CreateDbContext(string[] args) => new(For("Data Source=:memory:"));
    }
}

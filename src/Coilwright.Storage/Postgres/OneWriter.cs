using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Coilwright.Storage.Postgres;

/// <summary>
/// One writer at a time, as in a file: a unit of work that may write takes the shop's lock before its first look, and holds it until it
/// ends. What it sees from then on is what every writer before it committed, on whichever server.
/// </summary>
internal sealed class OneWriter : DbTransactionInterceptor
{
    /// <summary>
    /// Waits as long for another writer as a file does, and returns from a commit only when it is on the disk. A database holds one shop;
    /// the lock's number is the mark of a shop's file, "CoWr".
    /// </summary>
    public const string TakeTurn =
        "SET LOCAL lock_timeout = '20s'; SET LOCAL synchronous_commit = 'on'; SELECT pg_advisory_xact_lock(1131370354);";

    public override DbTransaction TransactionStarted(DbConnection connection, TransactionEndEventData eventData, DbTransaction result)
    {
        using DbCommand command = Turn(connection, result);
        command.ExecuteNonQuery();
        return result;
    }

    public override async ValueTask<DbTransaction> TransactionStartedAsync(
        DbConnection connection,
        TransactionEndEventData eventData,
        DbTransaction result,
        CancellationToken cancellationToken = default
    )
    {
        await using DbCommand command = Turn(connection, result);
        await command.ExecuteNonQueryAsync(cancellationToken);
        return result;
    }

    private static DbCommand Turn(DbConnection connection, DbTransaction transaction)
    {
        DbCommand command = connection.CreateCommand();
        command.CommandText = TakeTurn;
        command.Transaction = transaction;
        return command;
    }
}

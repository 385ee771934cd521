using System.Net.Sockets;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Coilwright.Storage;

/// <summary>Why nothing could be stored, where that is neither the person's mistake nor the program's.</summary>
/// <param name="DiskIsFull">True for a disk without room; false for a file that may only be read.</param>
/// <param name="Words">For people.</param>
public sealed record StorageFault(bool DiskIsFull, string Words)
{
    private const int ReadOnly = 8,
        Full = 13;

    /// <summary>SQLite's extended codes of a write, or of the index beside its log, for which there was no room.</summary>
    private const int WriteFailed = 778,
        LogIndexFailed = 4874;

    /// <summary>Error numbers of a full disk and of a used-up quota on Linux, and Windows' ERROR_DISK_FULL as an HRESULT.</summary>
    private const int NoSpace = 28,
        QuotaUsed = 122,
        WindowsDiskFull = unchecked((int)0x80070070);

    private static readonly StorageFault s_full = new(true, "the disk is full: nothing was stored. Make room on it and enter it again.");
    private static readonly StorageFault s_readOnly = new(
        false,
        "the shop's file may only be read: nothing was stored. Look at its rights, or at those of its folder."
    );

    private static readonly StorageFault s_mayNot = new(
        false,
        "this account may only read the shop's database: nothing was stored. Its owner grants the rights."
    );
    private static readonly StorageFault s_away = new(
        false,
        "the server of the shop's database does not answer. Send it again when it does: what was stored already is not stored twice."
    );

    /// <summary>The fault behind a failure; null when it is another one.</summary>
    public static StorageFault? Of(Exception failure)
    {
        for (Exception? at = failure; at is not null; at = at.InnerException)
        {
            switch (at)
            {
                case SqliteException { SqliteErrorCode: Full }:
                case SqliteException { SqliteExtendedErrorCode: WriteFailed or LogIndexFailed }:
                case IOException { HResult: NoSpace or QuotaUsed or WindowsDiskFull }:
                    return s_full;
                case SqliteException { SqliteErrorCode: ReadOnly }:
                    return s_readOnly;
                case PostgresException { SqlState: PostgresErrorCodes.DiskFull }:
                    return s_full;
                case PostgresException { SqlState: PostgresErrorCodes.ReadOnlySqlTransaction or PostgresErrorCodes.InsufficientPrivilege }:
                    return s_mayNot;
                case PostgresException lost when IsAway(lost.SqlState):
                case NpgsqlException { InnerException: SocketException or IOException }:
                    return s_away;
            }
        }

        return null;
    }

    private static bool IsAway(string state) =>
        state
            is PostgresErrorCodes.AdminShutdown
                or PostgresErrorCodes.CrashShutdown
                or PostgresErrorCodes.CannotConnectNow
                or PostgresErrorCodes.TooManyConnections;
}

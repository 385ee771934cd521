using Npgsql;

namespace Coilwright.Storage.Postgres;

/// <summary>What a server says no to, in words for people; never with a password.</summary>
internal static class PostgresRefusal
{
    /// <summary>Does something with a server, and says in words what went wrong.</summary>
    /// <exception cref="ShopFileException">The server said no, or nothing.</exception>
    public static async Task<T> GuardAsync<T>(PostgresAddress address, Func<Task<T>> act)
    {
        try
        {
            return await act();
        }
        catch (Exception refused) when (refused is NpgsqlException or System.Net.Sockets.SocketException or TimeoutException)
        {
            throw new ShopFileException($"{address.Shown}: {Words(address, refused)} Nothing in it was changed.", refused);
        }
        catch (InvalidOperationException refused) when (refused.InnerException is NpgsqlException inner)
        {
            throw new ShopFileException($"{address.Shown}: {Words(address, inner)} Nothing in it was changed.", refused);
        }
    }

    private static string Words(PostgresAddress address, Exception refused) =>
        refused switch
        {
            PostgresException said => Said(address, said),
            _ when refused.Message.Contains("No password", StringComparison.OrdinalIgnoreCase) => Password(address),
            _ => $"the server {address.Server} cannot be reached: {Line(refused.InnerException ?? refused)} Is it running, and is this its "
                + "address?",
        };

    private static string Said(PostgresAddress address, PostgresException said) =>
        said.SqlState switch
        {
            PostgresErrorCodes.InvalidPassword => Password(address),
            PostgresErrorCodes.InvalidAuthorizationSpecification =>
                $"the server {address.Server} does not let {Account(address)} in: {said.MessageText}.",
            PostgresErrorCodes.InvalidCatalogName =>
                $"the server {address.Server} has no database {address.Database}. Who keeps it makes one: createdb {address.Database}.",
            PostgresErrorCodes.InsufficientPrivilege =>
                $"{Account(address)} has no right to do this: {said.MessageText}. Make the account the owner of the database.",
            PostgresErrorCodes.TooManyConnections => $"the server {address.Server} has no connection left: {said.MessageText}.",
            PostgresErrorCodes.LockNotAvailable => "another program writes into the shop for long; try again.",
            _ => $"the server {address.Server} says: {said.MessageText} ({said.SqlState}).",
        };

    private static string Password(PostgresAddress address) =>
        $"the server {address.Server} refuses the password of {Account(address)}, or got none. Put it into PGPASSWORD or ~/.pgpass.";

    private static string Account(PostgresAddress address) => address.User.Length > 0 ? address.User : "this account";

    private static string Line(Exception failure) => failure.Message.Split('\n')[0].TrimEnd('.', ' ') + ".";
}

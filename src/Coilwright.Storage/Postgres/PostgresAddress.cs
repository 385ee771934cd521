using System.Globalization;
using System.Text.RegularExpressions;
using Npgsql;

namespace Coilwright.Storage.Postgres;

/// <summary>Where a shop's database is: <c>postgres://user@host:port/database</c>. A password has no place in it.</summary>
/// <param name="Shown">For people.</param>
/// <param name="Server">The server, for people.</param>
/// <param name="User">The account; empty for the usual one.</param>
/// <param name="Database">The database.</param>
/// <param name="ConnectionString">For the driver.</param>
internal sealed partial record PostgresAddress(string Shown, string Server, string User, string Database, string ConnectionString)
{
    private const int UsualPort = 5432,
        GreatestPort = 65535;

    /// <summary>How long a server may take to answer the first time, s.</summary>
    private const int PatienceSeconds = 10;

    private const string Allowed = "postgres://user@host:port/database, and after a ? host=FOLDER of a socket or sslmode=require";

    /// <summary>True for what is meant as such an address, right or wrong.</summary>
    public static bool IsOne(string connection) =>
        connection.StartsWith("postgres://", StringComparison.OrdinalIgnoreCase)
        || connection.StartsWith("postgresql://", StringComparison.OrdinalIgnoreCase);

    /// <summary>Reads an address.</summary>
    /// <exception cref="ShopFileException">It is none; names every problem, and never a password.</exception>
    public static PostgresAddress Read(string connection)
    {
        Match parts = Form().Match(connection);
        if (!parts.Success)
        {
            throw new ShopFileException($"this is no address of a shop's database. Allowed: {Allowed}.");
        }

        List<string> problems = [];
        if (parts.Groups["password"].Success)
        {
            problems.Add("a password does not belong into the address, where others can read it: put it into PGPASSWORD or ~/.pgpass");
        }

        string database = Uri.UnescapeDataString(parts.Groups["database"].Value);
        if (database.Length == 0)
        {
            problems.Add("the name of the database is missing");
        }

        NpgsqlConnectionStringBuilder made = new()
        {
            Host = parts.Groups["host"].Value.Trim('[', ']') is { Length: > 0 } host ? host : "localhost",
            Port = Port(parts.Groups["port"], problems),
            Database = database,
            ApplicationName = "Coilwright",
            Timeout = PatienceSeconds,
            IncludeErrorDetail = false,
        };
        string user = Uri.UnescapeDataString(parts.Groups["user"].Value);
        if (user.Length > 0)
        {
            made.Username = user;
        }

        AddOptions(made, parts.Groups["query"].Value, problems);
        return problems.Count > 0
            ? throw new ShopFileException($"{Hidden(parts)}: {string.Join("; ", problems)}. Allowed: {Allowed}.")
            : new PostgresAddress(
                Hidden(parts),
                string.Create(CultureInfo.InvariantCulture, $"{made.Host}:{made.Port}"),
                user,
                database,
                made.ConnectionString
            );
    }

    private static int Port(Group typed, List<string> problems)
    {
        if (!typed.Success)
        {
            return UsualPort;
        }

        if (int.TryParse(typed.Value, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port is >= 1 and <= GreatestPort)
        {
            return port;
        }

        problems.Add($"the port \"{typed.Value}\" is no number from 1 to 65535");
        return UsualPort;
    }

    private static void AddOptions(NpgsqlConnectionStringBuilder made, string query, List<string> problems)
    {
        foreach (string option in query.Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] pair = option.Split('=', 2);
            string value = pair.Length > 1 ? Uri.UnescapeDataString(pair[1]) : "";
            if (pair[0] == "host" && value.Length > 0)
            {
                made.Host = value;
            }
            else if (pair[0] == "sslmode" && Enum.TryParse(value.Replace("-", "", StringComparison.Ordinal), true, out SslMode mode))
            {
                made.SslMode = mode;
            }
            else
            {
                problems.Add($"\"{pair[0]}\" after the ? is not known, or not with this value");
            }
        }
    }

    private static string Hidden(Match parts) =>
        parts.Value.Replace(parts.Groups["password"].Value is { Length: > 0 } secret ? secret : "\n", "", StringComparison.Ordinal);

    [GeneratedRegex(
        @"^postgres(?:ql)?://(?:(?<user>[^@/:?]*)(?::(?<password>[^@]*))?@)?(?<host>\[[^\]]+\]|[^:/?@]*)(?::(?<port>[^/?@]*))?"
            + @"(?:/(?<database>[^/?]*))?(?:\?(?<query>.*))?$",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex Form();
}

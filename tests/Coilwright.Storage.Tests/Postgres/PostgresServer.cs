using System.Diagnostics;
using Npgsql;

[assembly: AssemblyFixture(typeof(Coilwright.Storage.Tests.Postgres.PostgresServer))]

namespace Coilwright.Storage.Tests.Postgres;

/// <summary>
/// A PostgreSQL server of Debian's package in a folder of its own, on a socket that nobody else finds. It starts when a test asks for it,
/// and ends with the tests whatever becomes of them: a shell holds it, and stops it when its input closes.
/// </summary>
public sealed class PostgresServer : IAsyncDisposable
{
    /// <summary>An account whose password is asked for; the others come in without.</summary>
    public const string Guarded = "guarded";

    /// <summary>How long the server may take to answer, s.</summary>
    private const int PatienceSeconds = 60;

    private const string Hold = "\"$@\" & server=$!; cat > /dev/null; kill -QUIT $server 2> /dev/null; wait $server";

    private readonly SemaphoreSlim _one = new(1);
    private readonly string _folder = Directory.CreateTempSubdirectory("cw-pg-").FullName;
    private Process? _shell;
    private bool _runs;

    public PostgresServer() => Current = this;

    /// <summary>The server of this run.</summary>
    public static PostgresServer Current { get; private set; } = null!;

    private static bool IsRoot => Environment.UserName == "root";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>The connection of a new database with nothing in it.</summary>
    public async Task<string> NewDatabaseAsync()
    {
        string name = "shop_" + Guid.NewGuid().ToString("N");
        await RunAsync("postgres", $"CREATE DATABASE {name}");
        return Connection(name);
    }

    /// <summary>The connection of a database.</summary>
    public string Connection(string database, string user = "shop") => $"postgres://{user}@localhost:5432/{database}?host={_folder}";

    /// <summary>Runs SQL past the program.</summary>
    public async Task<object?> RunAsync(string database, string sql)
    {
        await StartedAsync();
        await using NpgsqlConnection connection = new($"Host={_folder};Username=shop;Database={database};Pooling=false");
        await connection.OpenAsync(Cancel);
#pragma warning disable CA2100 // statements of the tests
        await using NpgsqlCommand command = new(sql, connection);
#pragma warning restore CA2100
        return await command.ExecuteScalarAsync(Cancel);
    }

    /// <summary>Name of the database of a connection.</summary>
    public static string DatabaseOf(string connection) => connection.Split('/')[3].Split('?')[0];

    public async ValueTask DisposeAsync()
    {
        if (_shell is not null)
        {
            _shell.StandardInput.Close();
            await _shell.WaitForExitAsync(CancellationToken.None);
            _shell.Dispose();
        }

        _one.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private async Task StartedAsync()
    {
        await _one.WaitAsync(Cancel);
        try
        {
            if (!_runs)
            {
                await StartAsync();
                _runs = true;
            }
        }
        finally
        {
            _one.Release();
        }
    }

    private async Task StartAsync()
    {
        string programs = Directory.Exists("/usr/lib/postgresql")
            ? Directory.EnumerateDirectories("/usr/lib/postgresql").OrderBy(path => path.Length).ThenBy(path => path).Last() + "/bin"
            : throw new InvalidOperationException("PostgreSQL is not installed: ./test installs it (apt-get install postgresql).");
        string data = Path.Combine(_folder, "data"),
            log = Path.Combine(_folder, "log");
        if (IsRoot)
        {
            await EndAsync(Begin(false, "chown", "postgres", _folder)); // the server refuses to run as root
        }

        await EndAsync(
            Begin(true, $"{programs}/initdb", "-D", data, "-U", "shop", "--auth=trust", "--encoding=UTF8", "--locale=C", "--no-sync")
        );
        await File.WriteAllTextAsync(
            Path.Combine(data, "pg_hba.conf"),
            $"local all {Guarded} scram-sha-256\nlocal all all trust\n",
            Cancel
        );
        _shell = Begin(
            true,
            "sh",
            "-c",
            $"exec 2> '{log}'; {Hold}",
            "sh",
            $"{programs}/postgres",
            "-D",
            data,
            "-k",
            _folder,
            "-c",
            "listen_addresses=",
            "-c",
            "fsync=off"
        );
        await AnswersAsync(log);
    }

    private async Task AnswersAsync(string log)
    {
        long began = Stopwatch.GetTimestamp();
        while (true)
        {
            try
            {
                await using NpgsqlConnection connection = new($"Host={_folder};Username=shop;Database=postgres;Pooling=false");
                await connection.OpenAsync(Cancel);
                return;
            }
            catch (NpgsqlException) when (Stopwatch.GetElapsedTime(began).TotalSeconds < PatienceSeconds && !_shell!.HasExited)
            {
                await Task.Delay(100, Cancel);
            }
            catch (NpgsqlException silent)
            {
                string said = File.Exists(log) ? await File.ReadAllTextAsync(log, Cancel) : "it wrote no log";
                throw new InvalidOperationException($"The PostgreSQL server does not answer:\n{said}", silent);
            }
        }
    }

    private static Process Begin(bool asServer, params string[] line)
    {
        string[] all = asServer && IsRoot ? ["setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups", .. line] : line;
        ProcessStartInfo start = new(all[0], all[1..])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            WorkingDirectory = "/",
        };
        return Process.Start(start) ?? throw new InvalidOperationException($"{all[0]} does not start.");
    }

    private static async Task EndAsync(Process process)
    {
        using (process)
        {
            string said = await process.StandardOutput.ReadToEndAsync(Cancel);
            await process.WaitForExitAsync(Cancel);
            Assert.True(process.ExitCode == 0, $"{process.StartInfo.FileName} ended with {process.ExitCode}: {said}");
        }
    }
}

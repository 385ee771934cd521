using System.Reflection;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Coilwright.Shared;

/// <summary>One line of evidence: table, a name to quote it by, and the columns.</summary>
internal sealed record EvidenceLine(
    string Table,
    string Id,
    string Check,
    string Source,
    string Standing,
    string Allowed,
    string Found,
    string Because
);

/// <summary>
/// The lines that the tests of one assembly leave in <c>artifacts/evidence/&lt;assembly&gt;.jsonl</c>; <c>tests/make-evidence</c> makes the
/// tables of them.
/// </summary>
internal static class EvidenceFile
{
    private const string RootMarker = "Coilwright.slnx";
    private static readonly JsonSerializerOptions s_plainText = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly Lock s_oneAtATime = new();

    /// <summary>The file of the running assembly, under the repository root.</summary>
    public static string Default() =>
        Path.Combine(Root(), "artifacts", "evidence", Assembly.GetExecutingAssembly().GetName().Name + ".jsonl");

    /// <summary>Adds a line; one of the same check gives way.</summary>
    public static void Add(string file, EvidenceLine line) => Rewrite(file, line.Check, line);

    /// <summary>Takes the line of a check away.</summary>
    public static void Remove(string file, string check) => Rewrite(file, check, null);

    private static void Rewrite(string file, string check, EvidenceLine? line)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        lock (s_oneAtATime)
        {
            using FileStream stream = OpenAlone(file);
            using StreamReader reader = new(stream, Encoding.UTF8, leaveOpen: true);
            IEnumerable<string> others = reader
                .ReadToEnd()
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Where(old => JsonSerializer.Deserialize<EvidenceLine>(old, s_plainText)!.Check != check);
            string[] lines = [.. others, .. line is null ? (string[])[] : [JsonSerializer.Serialize(line, s_plainText)]];
            stream.SetLength(0);
            stream.Write(Encoding.UTF8.GetBytes(string.Concat(lines.Select(one => one + "\n"))));
        }
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, RootMarker)))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException($"No {RootMarker} above {AppContext.BaseDirectory}.");
    }

    /// <summary>Waits up to ten seconds for another process to let go of the file.</summary>
    private static FileStream OpenAlone(string file)
    {
        for (int attempt = 0; ; attempt++)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (attempt < 500)
            {
                Thread.Sleep(20);
            }
        }
    }
}

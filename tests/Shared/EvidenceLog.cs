using System.Reflection;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Coilwright.Shared;

/// <summary>Notes what each outside check was held against and how it came out, for <c>docs/evidence.md</c>.</summary>
/// <remarks>
/// One JSON line per check in <c>artifacts/evidence/&lt;assembly&gt;.jsonl</c> under the repository root; <c>tests/make-evidence</c> turns the lines
/// into the table. A check is known by its name: recording it again replaces its line. Call it after the assertions, so that a failed check leaves no line,
/// and keep run times and other numbers that change from run to run out of <c>result</c>.
/// </remarks>
internal static class EvidenceLog
{
    private const string RootMarker = "Coilwright.slnx";
    private static readonly JsonSerializerOptions PlainText = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly Lock OneAtATime = new();

    /// <summary>Records one check that has passed.</summary>
    /// <param name="check">What was checked, in one sentence; its key.</param>
    /// <param name="source">Whom or what it was held against.</param>
    /// <param name="standing">"read", "read-secondary", "derived", "memory", "common practice", or "independent program".</param>
    /// <param name="tolerance">The difference allowed, with its unit.</param>
    /// <param name="result">The difference found, with its unit.</param>
    public static void Record(string check, string source, string standing, string tolerance, string result) =>
        RecordIn(DefaultFile(), check, source, standing, tolerance, result);

    /// <summary>The same, into a file of the caller's choice.</summary>
    public static void RecordIn(string file, string check, string source, string standing, string tolerance, string result)
    {
        string line = JsonSerializer.Serialize(new { check, source, standing, tolerance, result }, PlainText);
        string key = line[..line.IndexOf("\",\"source\":\"", StringComparison.Ordinal)];
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        lock (OneAtATime)
        {
            using FileStream stream = OpenAlone(file);
            using StreamReader reader = new(stream, Encoding.UTF8, leaveOpen: true);
            IEnumerable<string> others = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Where(old => !old.StartsWith(key + "\",\"source\":\"", StringComparison.Ordinal));
            byte[] content = Encoding.UTF8.GetBytes(string.Join('\n', others.Append(line)) + "\n");
            stream.SetLength(0);
            stream.Write(content);
        }
    }

    private static string DefaultFile()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, RootMarker)))
        {
            folder = folder.Parent;
        }

        string root = folder?.FullName ?? throw new DirectoryNotFoundException($"No {RootMarker} above {AppContext.BaseDirectory}.");
        string assembly = Assembly.GetExecutingAssembly().GetName().Name!;
        return Path.Combine(root, "artifacts", "evidence", assembly + ".jsonl");
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

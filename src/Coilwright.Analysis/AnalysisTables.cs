namespace Coilwright.Analysis;

/// <summary>Tables of published figures that stand in this assembly, parted by commas, with lines of comment that begin with #.</summary>
internal static class AnalysisTables
{
    /// <summary>Rows of a table without its heading.</summary>
    /// <param name="name">Folders and name, parted by points, without the ending: "Sampling.Tables.letters".</param>
    public static string[][] Rows(string name) => Read(name).Rows;

    /// <summary>Heading and rows of a table.</summary>
    /// <param name="name">Folders and name, parted by points, without the ending.</param>
    /// <exception cref="InvalidOperationException">There is no such table.</exception>
    public static (string[] Heading, string[][] Rows) Read(string name)
    {
        using Stream stream = typeof(AnalysisTables).Assembly.GetManifestResourceStream($"Coilwright.Analysis.{name}.csv")
            ?? throw new InvalidOperationException($"The table {name} is missing from the assembly.");
        using StreamReader reader = new(stream);
        string[][] lines =
        [
            .. reader
                .ReadToEnd()
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Where(line => line[0] != '#')
                .Select(line => line.TrimEnd('\r').Split(',')),
        ];
        return (lines[0], lines[1..]);
    }
}

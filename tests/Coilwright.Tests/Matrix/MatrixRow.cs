namespace Coilwright.Tests.Matrix;

/// <summary>One input, another value for it, and what has to move by physics when it takes that value.</summary>
/// <param name="Base">Recipe it is tried on.</param>
/// <param name="Path">Path in the recipe; "load:" before a path in the load.</param>
/// <param name="Value">Other value, as JSON.</param>
/// <param name="Moves">Columns that have to move; all others have to stand still.</param>
internal sealed record MatrixRow(string Base, string Path, string Value, IReadOnlySet<string> Moves)
{
    private const string Response = "peak peakGain loadedPeak loadedGain";

    /// <summary>What moves together, each set with its reason.</summary>
    private static readonly Dictionary<string, string> s_sets = new(StringComparer.Ordinal)
    {
        // The winding's cross-section or its way round: length of wire, air flux, neighbouring turns, and all that is made of them.
        ["turn"] =
            "meanTurn wireLength wireMass coilOhm airHenry coilHenry coilFarad ohm henry farad henry10k ohm10k linkage output humArea humZ "
            + Response,

        // Flux through the cores: the recoil or initial permeability, and where the iron is.
        ["core"] = "coilHenry henry henry10k ohm10k linkage output humArea humZ " + Response,

        // Currents in the cores: they begin well below 1 kHz in steel.
        ["eddy"] = "coilHenry henry henry10k ohm10k " + Response,

        // The magnets' field where the strings are.
        ["magnet"] = "linkage output field poleField",

        // The strings' place over it.
        ["overhead"] = "linkage output field",
        ["strings"] = "linkage output",

        // The copper's resistance alone.
        ["copper"] = "coilOhm ohm ohm10k " + Response,
        ["farads"] = "coilFarad farad " + Response,

        // What lies across the wires beside the winding: leads, metal, what is between.
        ["stray"] = "farad " + Response,
        ["loaded"] = "loadedPeak loadedGain",

        // How the coils are joined.
        ["branch"] = "henry henry10k ohm10k " + Response,

        // What is there only with two coils: their coupling, the hum they leave, and the voltage that each one's capacitance sees.
        ["pair"] = "coupling humLeft humY farad",
    };

    /// <summary>The rows of the table beside this file.</summary>
    public static IReadOnlyList<MatrixRow> Read() =>
        [
            .. File.ReadLines(RepositoryFiles.PathOf("tests", "Coilwright.Tests", "Matrix", "rows.txt"))
                .Where(line => line.Length > 0 && line[0] != '#')
                .Select(Parse),
        ];

    private static MatrixRow Parse(string line)
    {
        string[] cells = [.. line.Split('|').Select(cell => cell.Trim())];
        Assert.Equal(4, cells.Length);
        string[] moves =
        [
            .. cells[3]
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .SelectMany(word => s_sets.GetValueOrDefault(word, word).Split(' ')),
        ];
        Assert.All(moves, name => Assert.Contains(MatrixOutputs.Columns, column => column.Name == name));
        return new MatrixRow(cells[0], cells[1], cells[2], moves.ToHashSet(StringComparer.Ordinal));
    }
}

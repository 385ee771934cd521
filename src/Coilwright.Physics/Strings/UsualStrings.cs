namespace Coilwright.Physics.Strings;

/// <summary>Strings that are taken when a recipe names none.</summary>
/// <remarks>
/// Outer diameters in thousandths of an inch are common practice, no source; the cores of wound strings are from memory, ±10 %.
/// </remarks>
public static class UsualStrings
{
    private const double ThouM = 25.4e-6;

    // Outer and core, thou, thinnest first.
    private static readonly (double Outer, double Core)[] s_guitar =
    [
        (10, 10),
        (13, 13),
        (17, 17),
        (26, 14),
        (36, 16),
        (46, 18),
        (59, 20),
        (74, 22),
    ];
    private static readonly (double Outer, double Core)[] s_bass = [(32, 14), (45, 16), (65, 20), (85, 24), (105, 28), (130, 32)];

    /// <summary>Spacing from which strings are taken for a bass's, m.</summary>
    private const double BassSpacingM = 0.0135;

    /// <summary>Outer and core diameter of each string, m, thinnest first.</summary>
    /// <param name="count">Number of strings.</param>
    /// <param name="spacingM">Distance of neighbouring strings, m: from 13.5 mm on they are those of a bass.</param>
    public static IReadOnlyList<(double OuterM, double CoreM)> For(int count, double spacingM)
    {
        bool bass = spacingM >= BassSpacingM;
        (double Outer, double Core)[] set = bass ? s_bass : s_guitar;
        int first = bass && count <= 5 ? 1 : 0;
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i => set[Math.Min(first + i, set.Length - 1)])
                .Select(one => (one.Outer * ThouM, one.Core * ThouM)),
        ];
    }

    // Open strings, Hz, thinnest first: fourths and a third of the usual tuning at A = 440 Hz; common practice.
    private static readonly double[] s_guitarHz = [329.63, 246.94, 196.00, 146.83, 110.00, 82.41, 61.74, 46.25];
    private static readonly double[] s_bassHz = [130.81, 98.00, 73.42, 55.00, 41.20, 30.87];

    /// <summary>Frequency of each open string in the usual tuning, Hz, thinnest first.</summary>
    /// <param name="count">Number of strings.</param>
    /// <param name="spacingM">Distance of neighbouring strings, m: from 13.5 mm on they are those of a bass.</param>
    public static IReadOnlyList<double> TuningHz(int count, double spacingM)
    {
        bool bass = spacingM >= BassSpacingM;
        double[] set = bass ? s_bassHz : s_guitarHz;
        int first = bass && count <= 5 ? 1 : 0;
        return [.. Enumerable.Range(0, count).Select(i => set[Math.Min(first + i, set.Length - 1)])];
    }

    /// <summary>
    /// Sounding length of the open strings, m, where nothing says it: 648 mm, of a bass 864 mm; common practice, no source.
    /// </summary>
    /// <param name="spacingM">Distance of neighbouring strings, m: from 13.5 mm on they are those of a bass.</param>
    public static double ScaleLengthM(double spacingM) => spacingM >= BassSpacingM ? 0.864 : 0.648;
}

using System.Text.RegularExpressions;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Tests.Architecture;

/// <summary>The key of a quantity is written in the catalogue and in the file formats, and nowhere else.</summary>
public sealed partial class QuantityKeyTests
{
    /// <summary>
    /// Keys that are nothing but keys; the others ("turns", "build", "q") are words of recipes and forms as well, and are looked for only
    /// where something is compared with a quantity.
    /// </summary>
    private static readonly string[] s_clear =
    [
        QuantityKey.DcResistance,
        QuantityKey.AcResistance,
        QuantityKey.TurnsPerLayer,
        QuantityKey.BetweenCoils,
        QuantityKey.ResistanceMismatch,
        QuantityKey.InductanceMismatch,
        QuantityKey.UnloadedPeakGain,
        QuantityKey.LoadedPeakQ,
        QuantityKey.Minus3Db,
        QuantityKey.FieldAtStrings,
        QuantityKey.GradientX,
        QuantityKey.GradientY,
        QuantityKey.GradientZ,
        QuantityKey.AirInductance,
        QuantityKey.LoadedPeak,
        QuantityKey.UnloadedPeak,
        QuantityKey.LoadedPeakGain,
        QuantityKey.PoleField,
        QuantityKey.FirstSwing,
        QuantityKey.ChargeField,
        QuantityKey.SetOffset,
        QuantityKey.MeanTurnLength,
        QuantityKey.OuterLength,
        QuantityKey.OuterWidth,
    ];

    /// <summary>Names of form fields that are spelt like a key: addresses of pages, which never change.</summary>
    private static readonly string[] s_fields = ["TestForm.cs"];

    [Fact]
    public void No_key_of_a_quantity_is_written_outside_the_catalogue_and_the_formats()
    {
        string source = RepositoryFiles.PathOf("src");
        string[] held =
        [
            .. Directory
                .EnumerateFiles(source, "*.*", SearchOption.AllDirectories)
                .Where(path => Path.GetExtension(path) is ".cs" or ".razor" && IsHeld(Path.GetRelativePath(source, path))),
        ];
        Assert.InRange(held.Length, 500, 5000);
        string[] found =
        [
            .. held.SelectMany(path => Literals(File.ReadAllLines(path)).Select(line => $"{Path.GetRelativePath(source, path)}: {line}")),
        ];
        Assert.Empty(found);
    }

    [Theory]
    [InlineData("return reading.Quantity == \"turns\";")]
    [InlineData("is { Quantity: \"inductance\", Si: > 0 }")]
    [InlineData("Find(lines, \"loadedPeak\")")]
    public void A_key_that_is_written_is_found(string line) => Assert.Single(Literals([line]));

    [Theory]
    [InlineData("/// <param name=\"dcResistance\">of the coil</param>")]
    [InlineData("json.Read(\"turns\")")]
    public void A_comment_or_a_field_of_a_recipe_is_none(string line) => Assert.Empty(Literals([line]));

    private static bool IsHeld(string path) =>
        !path.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin" or "Migrations" or "Quantities" or "Coilwright.Formats")
        && !s_fields.Contains(Path.GetFileName(path));

    private static IEnumerable<string> Literals(IEnumerable<string> lines) =>
        lines
            .Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal))
            .Where(line => Words().Matches(line).Any(word => s_clear.Contains(word.Groups[1].Value)) || Compared().IsMatch(line))
            .Select(line => line.Trim());

    [GeneratedRegex("\"(\\w+)\"")]
    private static partial Regex Words();

    [GeneratedRegex("\\bQuantity\\s*(==|!=|:)\\s*\"")]
    private static partial Regex Compared();
}

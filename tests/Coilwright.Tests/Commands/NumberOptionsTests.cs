using System.CommandLine;
using System.Text.RegularExpressions;
using Coilwright.Formats.Csv;

namespace Coilwright.Tests.Commands;

/// <summary>
/// Every option and argument of every command that holds a number reads it by the workshop's one rule, or says why not in its words.
/// </summary>
public sealed partial class NumberOptionsTests
{
    private static readonly CommandContext s_desk = new(TextWriter.Null, TextWriter.Null, TimeProvider.System);

    private static readonly Type[] s_whole = [typeof(int), typeof(int?)],
        s_numbers = [.. s_whole, typeof(double), typeof(double?)];

    private static readonly Type[] s_otherNumbers =
    [
        typeof(long),
        typeof(long?),
        typeof(uint),
        typeof(ushort),
        typeof(float),
        typeof(float?),
        typeof(decimal),
        typeof(decimal?),
        typeof(int[]),
        typeof(double[]),
    ];

    public static TheoryData<string, string> Options =>
        [.. All(Root(), []).Where(one => s_numbers.Contains(one.Type)).Select(one => (string.Join(' ', one.Path), one.Name))];

    [Fact]
    public void The_walk_finds_every_number() // proof that the theories below have something to hold
    {
        string[] found = [.. Options.Select(row => string.Join(' ', row.Data.Item1, row.Data.Item2))];
        Assert.Superset(
            new HashSet<string>([
                "spread --seed",
                "spread --samples",
                "serve --port",
                "demo --port",
                "fit --eddy",
                "batch start --quantity",
                "sample LOT",
                "judge --meter",
            ]),
            found.ToHashSet()
        );
        Assert.DoesNotContain(All(Root(), []), one => s_otherNumbers.Contains(one.Type));
    }

    [Theory]
    [MemberData(nameof(Options))]
    public void Rubbish_is_refused_by_name_in_workshop_words(string command, string option)
    {
        foreach (string rubbish in new[] { "eight", "8..000", "1e999", "8,00,0" })
        {
            string[] errors =
            [
                .. Parse(command, option, rubbish)
                    .Errors.Select(error => error.Message)
                    .Where(message => message.StartsWith(option + ": ", StringComparison.Ordinal)),
            ];
            string error = Assert.Single(errors);
            Assert.Matches("is not a (whole )?number|do not make one number|too large", error);
            Assert.DoesNotContain("System.", error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Options))]
    public void Numbers_are_read_as_people_type_them(string command, string option)
    {
        bool isWhole = s_whole.Contains(Of(command, option).Type);
        (string Typed, double Value)[] typed = isWhole
            ? [("8,000", 8000), ("8.000", 8000), ("8 000", 8000), ("8'000", 8000), ("8k", 8000), ("12", 12)]
            : [("0,5", 0.5), ("0.5", 0.5), ("12", 12)];
        foreach ((string text, double value) in typed)
        {
            ParseResult parsed = Parse(command, option, text);
            Assert.DoesNotContain(parsed.Errors, error => error.Message.StartsWith(option + ":", StringComparison.Ordinal));
            Assert.Equal(value, Convert.ToDouble(parsed.GetValue<object>(option), System.Globalization.CultureInfo.InvariantCulture));
        }
    }

    [Theory]
    [InlineData("dcResistance=0,5;turns=2")]
    [InlineData("dcResistance=0.5,turns=2")]
    public void Weights_to_pair_by_are_read_by_the_same_rule(string typed) =>
        Assert.Equal([("dcResistance", 0.5), ("turns", 2.0)], Input.PairingOptions.ReadBy(typed).By);

    [Fact]
    public void A_weight_that_is_no_number_is_refused_by_name()
    {
        Workshop.Entry.Problem problem = Assert.Single(
            Assert.Throws<Input.WrongInputException>(() => Input.PairingOptions.ReadBy("turns=much")).Problems
        );
        Assert.Equal(("--by", "\"much\" is no weight", "0.001 to 1000"), (problem.Field, problem.Message, problem.Allowed));
    }

    /// <summary>
    /// Digits behind a matched pattern, cells of tables whose columns say which sign is decimal, and cells that are written are no typed
    /// numbers.
    /// </summary>
    [Fact]
    public void No_command_reads_a_typed_number_past_the_one_parser()
    {
        string[] own = ["CsvTable.cs", "CurveRow.cs", "TableNumbers.cs"];
        string[] reading =
        [
            .. ((string[])["src/Coilwright", "src/Coilwright.Formats"])
                .SelectMany(room => RepositoryFiles.Written(room, ".cs"))
                .Where(file => NumberParse().IsMatch(File.ReadAllText(file)))
                .Select(file => Path.GetFileName(file))
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(own, reading);
    }

    private static RootCommand Root() => Cli.BuildRoot(s_desk);

    private static IEnumerable<(string[] Path, string Name, Type Type)> All(Command command, string[] path) =>
        [
            .. command.Options.Select(option => (path, option.Name, option.ValueType)),
            .. command.Arguments.Select(argument => (path, argument.Name, argument.ValueType)),
            .. command.Subcommands.SelectMany(inner => All(inner, [.. path, inner.Name])),
        ];

    private static (string[] Path, string Name, Type Type) Of(string command, string option) =>
        All(Root(), []).Single(one => string.Join(' ', one.Path) == command && one.Name == option);

    /// <summary>Parsed, not run: what else the command needs may be missing.</summary>
    private static ParseResult Parse(string command, string option, string typed)
    {
        string[] words = option.StartsWith("--", StringComparison.Ordinal) ? [option, typed] : [typed];
        return Root().Parse([.. command.Split(' '), .. words]);
    }

    [GeneratedRegex(@"\b(?:double|float|decimal|int|long|uint|ushort)\.(?:Try)?Parse\(", RegexOptions.CultureInvariant)]
    private static partial Regex NumberParse();
}

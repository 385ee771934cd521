using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Pieces.Events;

namespace Coilwright.Tests.Architecture;

/// <summary>A kind of event is one record; the rest of the sources asks it.</summary>
public sealed class EventFilesTests
{
    private const int Most = 10;

    public static TheoryData<Type> Kinds => [.. KindsOf(typeof(PieceEvent)), .. KindsOf(typeof(BatchEvent))];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_kind_of_event_is_known_to_ten_files_at_most(Type kind)
    {
        IReadOnlyList<string> files = EventFiles.Naming(kind.Name, Sources().Where(source => Sees(source, kind)));
        Assert.Contains(files, file => Path.GetFileName(file) == kind.Name + ".cs");
        Assert.True(files.Count <= Most, string.Join("\n", files));
    }

    [Fact]
    public void An_event_that_an_eleventh_file_decodes_is_seen()
    {
        (string, string)[] planted =
        [
            ("new.cs", "x = new Held { };"),
            ("of.cs", "all.OfType<Held>()"),
            ("is.cs", "one is Held"),
            ("or.cs", "one is Lifted or Held"),
            ("not.cs", "one is not Held"),
            ("declared.cs", "Held? held = null;"),
            ("array.cs", "Held[] held = [];"),
            ("parameter.cs", "Hold Of(Held held)"),
            ("pattern.cs", "last is [Held held]"),
            ("listed.cs", "[JsonDerivedType(typeof(Held), nameof(Held))]"),
            ("record.cs", "public sealed record Held : PieceEvent"),
            ("member.cs", "StepState.Held => 1, // new Held"),
        ];
        Assert.Equal(planted.Length - 1, EventFiles.Naming("Held", planted).Count);
    }

    [Fact]
    public void Every_kind_stands_in_the_list_and_the_format_names_all_that_have_a_line()
    {
        Assert.Equal(KindsOf(typeof(PieceEvent)).Count(), PieceEvent.Kinds.Count);
        Assert.Equal(KindsOf(typeof(BatchEvent)).Count(), BatchEvent.Kinds.Count);
        JsonNode schema = JsonNode.Parse(File.ReadAllText(RepositoryFiles.PathOf("schemas", "piece.json")))!;
        JsonArray named = schema["properties"]!["events"]!["items"]!["properties"]!["kind"]!["enum"]!.AsArray();
        Assert.Equal(
            PieceEvent
                .Kinds.Where(kind => kind != PieceEvent.KindOf<ToldLate>())
                .Select(JsonNamingPolicy.CamelCase.ConvertName)
                .Order(StringComparer.Ordinal),
            named.Select(name => name!.GetValue<string>()).Order(StringComparer.Ordinal)
        );
    }

    private static IEnumerable<Type> KindsOf(Type family) =>
        family.Assembly.GetTypes().Where(type => type.IsSubclassOf(family) && !type.IsAbstract);

    /// <summary>Pages see every kind; other files see those of the families that they name.</summary>
    private static bool Sees((string Path, string Text) source, Type kind) =>
        source.Path.EndsWith(".razor", StringComparison.Ordinal) || source.Text.Contains(kind.Namespace!, StringComparison.Ordinal);

    private static IEnumerable<(string Path, string Text)> Sources() =>
        from pattern in (string[])["*.cs", "*.razor"]
        from path in Directory.EnumerateFiles(RepositoryFiles.PathOf("src"), pattern, SearchOption.AllDirectories)
        where !path.Contains("/obj/", StringComparison.Ordinal) && !path.Contains("/Migrations/", StringComparison.Ordinal)
        select (path, File.ReadAllText(path));
}

using System.Reflection;
using NetArchTest.Rules;

namespace Coilwright.Tests.Architecture;

public sealed class ArchitectureTests
{
    private static readonly string[] s_outsideWorld =
    [
        "System.IO.File",
        "System.IO.Directory",
        "System.IO.FileInfo",
        "System.Net",
        "System.Data",
        "System.TimeProvider", // System.Environment cannot be listed: the compiler puts it into every iterator
        "System.Diagnostics.Process",
        "System.Console",
        "Microsoft.EntityFrameworkCore",
        "Microsoft.AspNetCore",
    ];

    public static TheoryData<string> Rooms => [.. HouseArrows.Rooms];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Project_references_follow_the_arrows_of_the_house(string room)
    {
        string xml = File.ReadAllText(RepositoryFiles.PathOf("src", room, room + ".csproj"));

        Assert.Empty(HouseArrows.Violations(room, HouseArrows.ProjectReferences(xml)));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Compiled_references_follow_the_arrows_of_the_house(string room)
    {
        Assembly assembly = Load(room);

        Assert.Empty(HouseArrows.Violations(room, assembly.GetReferencedAssemblies().Select(name => name.Name ?? "")));
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Sources_name_only_namespaces_of_rooms_below(string room)
    {
        IEnumerable<string> wrong =
            from path in RepositoryFiles.Written(Path.Combine("src", room), ".cs", ".razor")
            from violation in HouseArrows.Violations(room, HouseArrows.RoomsNamedIn(File.ReadAllText(path)))
            select Path.GetFileName(path) + ": " + violation;

        Assert.Empty(wrong);
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Types_live_in_the_namespace_of_their_room(string room)
    {
        IEnumerable<string?> wrong = Load(room)
            .GetExportedTypes()
            .Where(type => type.Namespace != room && type.Namespace?.StartsWith(room + ".", StringComparison.Ordinal) != true)
            .Where(type => type != typeof(Program))
            .Select(type => type.FullName);

        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_folder_of_src_is_a_room_of_the_house() =>
        Assert.Equal(
            HouseArrows.Rooms.Order(StringComparer.Ordinal),
            Directory.GetDirectories(RepositoryFiles.PathOf("src")).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );

    [Theory]
    [InlineData("Coilwright.Physics")]
    [InlineData("Coilwright.Analysis")]
    public void Physics_and_analysis_touch_no_file_clock_database_or_network(string room) =>
        Assert.Empty(TypesThatReachOutside(Load(room)));

    [Theory]
    [InlineData("Coilwright.Workshop")]
    [InlineData("Coilwright.Storage")]
    [InlineData("Coilwright.Papers")]
    [InlineData("Coilwright.Formats")]
    [InlineData("Coilwright.Application")]
    public void Rooms_behind_the_pages_know_no_web_server(string room)
    {
        Assert.Empty(HouseArrows.WebServer(File.ReadAllText(RepositoryFiles.PathOf("src", room, room + ".csproj"))));
        Assert.DoesNotContain(Load(room).GetReferencedAssemblies(), name => HouseArrows.WebServer(name.Name ?? "").Count > 0);
    }

    // Proof that each check above fails when its rule is broken.
    [Theory]
    // back
    [InlineData("Coilwright.Physics", "../Coilwright.Analysis/Coilwright.Analysis.csproj", "Coilwright.Physics → Coilwright.Analysis")]
    [InlineData("Coilwright.Workshop", "../Coilwright.Formats/Coilwright.Formats.csproj", "Coilwright.Workshop → Coilwright.Formats")]
    [InlineData("Coilwright.Application", "../Coilwright.Web/Coilwright.Web.csproj", "Coilwright.Application → Coilwright.Web")]
    // sideways
    [InlineData("Coilwright.Papers", "..\\Coilwright.Storage\\Coilwright.Storage.csproj", "Coilwright.Papers → Coilwright.Storage")]
    [InlineData("Coilwright.Formats", "../Coilwright.Papers/Coilwright.Papers.csproj", "Coilwright.Formats → Coilwright.Papers")]
    [InlineData("Coilwright.Papers", "../Coilwright.Formats/Coilwright.Formats.csproj", "Coilwright.Papers → Coilwright.Formats")]
    // past the use cases
    [InlineData("Coilwright.Web", "../Coilwright.Storage/Coilwright.Storage.csproj", "Coilwright.Web → Coilwright.Storage")]
    [InlineData("Coilwright", "../Coilwright.Storage/Coilwright.Storage.csproj", "Coilwright → Coilwright.Storage")]
    // unknown
    [InlineData("Coilwright.Workshop", "../Coilwright.Shared/Coilwright.Shared.csproj", "Coilwright.Workshop → Coilwright.Shared")]
    public void A_planted_project_reference_is_caught(string room, string planted, string expected)
    {
        string xml = $"""<Project Sdk="Microsoft.NET.Sdk"><ItemGroup><ProjectReference Include="{planted}" /></ItemGroup></Project>""";

        Assert.Equal([expected], HouseArrows.Violations(room, HouseArrows.ProjectReferences(xml)));
    }

    [Fact]
    public void A_compiled_reference_against_the_arrows_is_caught()
    {
        // This test program itself refers to the whole house: were it the physics room, that would be wrong.
        AssemblyName[] references = typeof(ArchitectureTests).Assembly.GetReferencedAssemblies();

        Assert.Contains(HouseArrows.Violations("Coilwright.Physics", references.Select(name => name.Name ?? "")), violation =>
            violation == "Coilwright.Physics → Coilwright.Workshop"
        );
    }

    [Theory]
    [InlineData("""<Project Sdk="Microsoft.NET.Sdk.Razor"></Project>""", "Microsoft.NET.Sdk.Razor")]
    [InlineData("""<Project Sdk="Microsoft.NET.Sdk.Web"></Project>""", "Microsoft.NET.Sdk.Web")]
    [InlineData("""<FrameworkReference Include="Microsoft.AspNetCore.App" />""", "Microsoft.AspNetCore")]
    [InlineData("""<PackageReference Include="Microsoft.AspNetCore.Components" />""", "Microsoft.AspNetCore")]
    public void A_planted_reference_to_the_web_server_is_caught(string planted, string expected) =>
        Assert.Equal([expected], HouseArrows.WebServer(planted));

    [Fact]
    public void A_compiled_reference_to_the_web_server_is_caught() =>
        // The pages' room refers to it: were it the papers' room, that would be wrong.
        Assert.Contains(Load("Coilwright.Web").GetReferencedAssemblies(), name => HouseArrows.WebServer(name.Name ?? "").Count > 0);

    [Fact]
    public void A_planted_using_directive_is_caught() =>
        Assert.Equal(
            ["Coilwright.Bench → Coilwright.Web"],
            HouseArrows.Violations("Coilwright.Bench", HouseArrows.RoomsNamedIn("using Coilwright.Web.Pages;\nusing Coilwright.Physics;"))
        );

    [Fact]
    public void A_planted_type_that_reads_a_file_is_caught() =>
        Assert.Contains(typeof(PlantedFileReader).FullName, TypesThatReachOutside(typeof(PlantedFileReader).Assembly));

    private static string[] TypesThatReachOutside(Assembly assembly) =>
        Types
            .InAssembly(assembly)
            .ShouldNot()
            .HaveDependencyOnAny(s_outsideWorld)
            .GetResult()
            .FailingTypeNames?.Select(name => name.Replace('/', '+'))
            .ToArray()
        ?? [];

    private static Assembly Load(string room) => Assembly.Load(room == "Coilwright" ? "coilwright" : room);

    /// <summary>Breaks the rule of pure rooms on purpose, and names a room so that the compiler keeps the reference.</summary>
    private static class PlantedFileReader
    {
        public static string Read(Workshop.Entry.Problem problem) => File.ReadAllText(problem.Field);
    }
}

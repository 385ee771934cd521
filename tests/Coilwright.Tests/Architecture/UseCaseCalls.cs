using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Coilwright.Tests.Architecture;

/// <summary>What pages and commands leave to the use cases: the forecast, the search, the field engine's model and the database.</summary>
public static class UseCaseCalls
{
    private const string StorageRoom = "Coilwright.Storage",
        Database = "Microsoft.EntityFrameworkCore";

    private static readonly string[] s_reserved =
    [
        "Coilwright.Analysis.Forecasts.Forecaster",
        "Coilwright.Analysis.Forecasts.ForecastBranch",
        "Coilwright.Analysis.Spread.RunForecaster",
        "Coilwright.Workshop.Recipes.RecipeModelBuilder",
        "Coilwright.Workshop.Solving.RecipeSolver",
    ];

    /// <summary>Reserved types that a compiled assembly refers to, in their order by name.</summary>
    public static IReadOnlyList<string> Reserved(string assemblyPath) =>
        [.. TypesNamedIn(assemblyPath).Where(IsReserved).Order(StringComparer.Ordinal)];

    private static bool IsReserved(string type) =>
        s_reserved.Contains(type)
        || type.StartsWith(StorageRoom + ".", StringComparison.Ordinal)
        || type.StartsWith(Database + ".", StringComparison.Ordinal);

    /// <summary>Every type of another assembly that the compiler wrote a reference to.</summary>
    private static IReadOnlyList<string> TypesNamedIn(string assemblyPath)
    {
        using FileStream file = File.OpenRead(assemblyPath);
        using PEReader image = new(file);
        MetadataReader metadata = image.GetMetadataReader();
        return
        [
            .. metadata
                .TypeReferences.Select(metadata.GetTypeReference)
                .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}"),
        ];
    }
}

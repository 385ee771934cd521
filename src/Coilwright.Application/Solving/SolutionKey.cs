using System.Security.Cryptography;
using System.Text;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>A short name of an answer, for links: it changes with the recipe that was found.</summary>
public static class SolutionKey
{
    private const int Length = 10;

    /// <summary>The key of an answer.</summary>
    public static string Of(Solution solution) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(solution.RecipeJson)))[..Length];
}

using Coilwright.Workshop.Tracing;

namespace Coilwright.Output;

/// <summary>Writes what was found in the file format "coilwright.trace/1".</summary>
internal static class TraceJson
{
    public static string Write(string asked, IReadOnlyList<TraceHit> hits) => PlainJson.Write(new
    {
        Format = "coilwright.trace/1",
        Asked = asked,
        Found = hits.Select(hit => new
        {
            hit.Kind,
            hit.Name,
            hit.Words,
            Pieces = hit.Pieces.Select(piece => new { piece.Serial, piece.Recipe, piece.State, piece.Customer, piece.Through }),
        }),
    });
}

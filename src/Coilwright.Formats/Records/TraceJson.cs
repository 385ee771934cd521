using Coilwright.Workshop.Tracing;

namespace Coilwright.Formats.Records;

/// <summary>Writes what was found in the file format "coilwright.trace/1".</summary>
public static class TraceJson
{
    public static string Write(SearchAnswer answer) =>
        JsonListWriter.Write(
            new
            {
                Format = "coilwright.trace/1",
                answer.Asked,
                Found = answer.Hits.Select(hit => new
                {
                    hit.Kind,
                    hit.Name,
                    Match = hit.Match switch
                    {
                        NameMatch.Part => "part",
                        NameMatch.Number => "number",
                        _ => "name",
                    },
                    hit.Words,
                    Pieces = hit.Pieces.Select(piece => new
                    {
                        piece.Serial,
                        piece.Recipe,
                        piece.State,
                        piece.Customer,
                        piece.Through,
                    }),
                    Coils = hit.Loose.Select(coil => new { coil.Code, coil.Recipe }),
                }),
                answer.Near,
                answer.LeftOut,
            }
        );
}

using Coilwright.Workshop.Customers;

namespace Coilwright.Workshop.Tracing;

/// <summary>Everything that holds of one thing, for a shop that must set it aside, look at it again or ask it back.</summary>
/// <param name="Asked">What it was asked for by: a lot may be that of several spools.</param>
/// <param name="Of">The thing, with its pieces and the coils that stand in none.</param>
/// <param name="Customers">Customers who have some of it, in order of their references.</param>
public sealed record RecallList(string Asked, TraceHit Of, IReadOnlyList<RecallCustomer> Customers)
{
    /// <summary>Kinds of which several may be of one lot: they are recalled together.</summary>
    private static readonly string[] s_ofOneLot = ["spool-lot", "bath-lot", "ink"];

    /// <summary>What the columns of <see cref="Rows"/> are.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["what", "name", "recipe", "where it is", "customer", "used as"];

    /// <summary>Pieces that never went to a customer.</summary>
    public int Here => Of.Pieces.Count(piece => piece.Customer.Length == 0);

    /// <summary>Pieces first, then coils: a line each.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Rows =>
        [
            .. Of.Pieces.Select(
                IReadOnlyList<string> (piece) => ["piece", piece.Serial, piece.Recipe, piece.State, piece.Customer, piece.Through]
            ),
            .. Of.Loose.Select(IReadOnlyList<string> (coil) => ["coil", coil.Code, coil.Recipe, "in no piece", "", ""]),
        ];

    /// <summary>A list for each thing that was found, one for all that are of one lot.</summary>
    /// <param name="asked">What was asked for.</param>
    /// <param name="hits">The things.</param>
    /// <param name="customers">The shop's customers.</param>
    public static IReadOnlyList<RecallList> FromHits(string asked, IReadOnlyList<TraceHit> hits, IReadOnlyList<CustomerRecord> customers) =>
        [
            .. hits.GroupBy(hit => (hit.Kind, s_ofOneLot.Contains(hit.Kind) ? "" : hit.Name, hit.Id))
                .Select(same => FromHit(asked, Together(asked, [.. same]), customers)),
        ];

    private static TraceHit Together(string asked, TraceHit[] hits) =>
        hits.Length == 1
            ? hits[0]
            : new TraceHit(
                hits[0].Kind,
                asked,
                string.Join("; ", hits.Select(hit => $"{hit.Name}, {hit.Words}")),
                [
                    .. hits.SelectMany(hit => hit.Pieces)
                        .GroupBy(piece => piece.Serial, StringComparer.OrdinalIgnoreCase)
                        .OrderBy(own => own.Key, StringComparer.OrdinalIgnoreCase)
                        .Select(own =>
                            own.First() with
                            {
                                Through = string.Join(", ", own.Select(piece => piece.Through).Distinct(StringComparer.Ordinal)),
                            }
                        ),
                ]
            )
            {
                Loose = [.. hits.SelectMany(hit => hit.Loose).Distinct()],
            };

    private static RecallList FromHit(string asked, TraceHit hit, IReadOnlyList<CustomerRecord> customers) =>
        new(
            asked,
            hit,
            [
                .. hit
                    .Pieces.Where(piece => piece.Customer.Length > 0)
                    .GroupBy(piece => piece.Customer, StringComparer.OrdinalIgnoreCase)
                    .OrderBy(own => own.Key, StringComparer.OrdinalIgnoreCase)
                    .Select(own => new RecallCustomer(customers.First(one => one.Reference == own.Key), [.. own])),
            ]
        );
}

/// <summary>A customer who has some of what is recalled.</summary>
/// <param name="Customer">The customer; without a name where it was erased.</param>
/// <param name="Pieces">Pieces that went there last.</param>
public sealed record RecallCustomer(CustomerRecord Customer, IReadOnlyList<TracedState> Pieces);

using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Papers.Recalls;

/// <summary>Papers of a recall: the list that stays in the shop, and the letter that says no more than a customer needs.</summary>
public static class RecallPapers
{
    private const string Tick = "☐";
    private const string ByHand = "______________________________________________";

    /// <summary>The list: everything that holds of the thing, to be ticked off.</summary>
    public static Sheet List(RecallList list, SheetHeading heading) =>
        new(
            "Recall list",
            list.Of.Name,
            heading,
            [
                new TextPart($"{list.Of.Name}: {list.Of.Words}."),
                new FiguresPart(
                    [
                        new KeyFigure("Pieces here", Whole(list.Here)),
                        new KeyFigure("Pieces sent out", Whole(list.Of.Pieces.Count - list.Here)),
                        new KeyFigure("Customers", Whole(list.Customers.Count)),
                        new KeyFigure("Coils in no piece", Whole(list.Of.Loose.Count)),
                    ],
                    4
                ),
                new TextPart("Set aside what is here before anything more leaves. Write to each customer. Tick each line when it is done."),
                .. Table(
                    "Pieces",
                    ["piece", "recipe", "where it is", "customer", "used as", Tick],
                    [
                        .. list.Of.Pieces.Select(
                            IReadOnlyList<string> (piece) => [piece.Serial, piece.Recipe, piece.State, piece.Customer, piece.Through, Tick]
                        ),
                    ],
                    [1.2, 1.8, 2.4, 1, 1.4, 0.3]
                ),
                .. Table(
                    "Coils in no piece",
                    ["coil", "recipe", Tick],
                    [.. list.Of.Loose.Select(IReadOnlyList<string> (coil) => [coil.Code, coil.Recipe, Tick])],
                    [1.5, 3, 0.3]
                ),
                new CautionPart(string.Join(' ', Cautions.For(Job.Handling))),
            ],
            Sheet.CodeOf(list.Of.Name)
        )
        {
            OfRevision = false,
        };

    /// <summary>
    /// The letter: serials and models, what is wrong and what is asked, in the shop's words. Nothing of wire, lots or coils stands in it.
    /// </summary>
    public static Sheet Letter(RecallCustomer customer, string reason, string ask, SheetHeading heading) =>
        new(
            "Recall",
            customer.Customer.Reference,
            heading,
            [
                new TitlePart("To"),
                new TextPart(customer.Customer.Words),
                new TextPart(
                    customer.Pieces.Count == 1
                        ? "One piece that we sent you may not be as it should be."
                        : $"{Whole(customer.Pieces.Count)} pieces that we sent you may not be as they should be."
                ),
                new TablePart(
                    ["no.", "serial", "model"],
                    [
                        .. customer.Pieces.Select(
                            IReadOnlyList<string> (piece, at) =>
                                [(at + 1).ToString(CultureInfo.InvariantCulture), piece.Serial, piece.Recipe]
                        ),
                    ],
                    [0.4, 1.5, 3]
                ),
                new TitlePart("What is wrong"),
                new TextPart(reason.Length > 0 ? reason : ByHand),
                new TitlePart("What we ask of you"),
                new TextPart(ask.Length > 0 ? ask : ByHand),
                new TextPart($"{heading.Shop}, signed: {ByHand}"),
            ],
            Sheet.CodeOf(customer.Customer.Reference)
        )
        {
            OfRevision = false,
        };

    private static IEnumerable<SheetPart> Table(
        string title,
        IReadOnlyList<string> headings,
        IReadOnlyList<IReadOnlyList<string>> rows,
        IReadOnlyList<double> widths
    ) => rows.Count > 0 ? [new TitlePart(title), new TablePart(headings, rows, widths)] : [];

    private static string Whole(int count) => count.ToString("#,##0", CultureInfo.InvariantCulture);
}

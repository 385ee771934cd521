using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>Which pieces a list shows; what is empty asks nothing.</summary>
/// <param name="State">One of <see cref="States"/>.</param>
/// <param name="Recipe">Name of the recipe.</param>
/// <param name="Customer">A part of the words for the customer that it went to.</param>
/// <param name="Serial">A part of the serial.</param>
public sealed record PieceFilter(string State = "", string Recipe = "", string Customer = "", string Serial = "")
{
    private const string InShop = "in the shop",
        Held = "held",
        MayGoOn = "may go on",
        Shipped = "shipped",
        Back = "returned",
        Scrapped = "scrapped";

    /// <summary>Words for the states that can be asked for.</summary>
    public static IReadOnlyList<string> States { get; } = [InShop, Held, MayGoOn, Shipped, Back, Scrapped];

    /// <summary>True when nothing is asked.</summary>
    public bool IsEmpty => State.Length + Recipe.Length + Customer.Length + Serial.Length == 0;

    /// <summary>True for a piece that it shows.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="status">Where it stands among its steps.</param>
    /// <param name="customer">Words for a customer's id.</param>
    public bool Shows(PieceSnapshot piece, StepStatus status, Func<Guid, string> customer) =>
        IsOfState(piece, status)
        && (Recipe.Length == 0 || string.Equals(piece.Recipe.Name, Recipe, StringComparison.OrdinalIgnoreCase))
        && Has(piece.Piece.Serial, Serial)
        && (Customer.Trim().Length == 0 || Has(CustomerOf(piece, customer), Customer));

    /// <summary>Words for the customer that has it; empty while it is in the shop.</summary>
    public static string CustomerOf(PieceSnapshot piece, Func<Guid, string> customer) =>
        piece.History.Shipment is { } shipment ? customer(shipment.CustomerId) : "";

    private bool IsOfState(PieceSnapshot piece, StepStatus status) =>
        State switch
        {
            InShop => piece.IsInShop,
            Held => piece.IsInShop && status.NeedsPerson,
            MayGoOn => piece.IsInShop && status.State is StepState.MayMove or StepState.MayEnd or StepState.Late,
            Shipped => piece.History.Shipment is not null,
            Back => piece.IsInShop && piece.History.Return is not null,
            Scrapped => piece.History.IsScrapped,
            _ => true,
        };

    private static bool Has(string whole, string part) => whole.Contains(part.Trim(), StringComparison.OrdinalIgnoreCase);
}

using Coilwright.Workshop;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Web;

/// <summary>The use cases of pieces, from coils to customers and back.</summary>
public sealed class PieceServices
{
    public PieceServices(IShopRecords records, WindingRoom winding, TimeProvider time)
    {
        Shelf = new PieceShelf(records, time);
        Coils = new CoilStore(records, winding);
        Assembly = new AssemblyRoom(records, Shelf, Coils);
        Steps = new StepRoom(records, Shelf);
        Magnets = new ChargeRoom(records, Shelf);
        Potting = new PottingRoom(records, Shelf);
        Undo = new UndoDesk(records, Shelf, Potting);
        Ink = new InkRoom(records, Shelf, time);
        StepUndo = new StepUndoing(records, Shelf, Potting);
        Times = new TimeMending(records, Shelf, time);
        Sets = new SetRoom(records, Shelf, new OutputBook(Coils));
        Test = new TestBench(records, Shelf, time);
        Dispatch = new Dispatch(records, Shelf);
        Returns = new ReturnDesk(records, Shelf, time);
        Trace = new TraceDesk(records, Shelf);
        Customers = new CustomerBook(records, time);
    }

    public PieceShelf Shelf { get; }
    public CoilStore Coils { get; }
    public AssemblyRoom Assembly { get; }
    public StepRoom Steps { get; }
    public ChargeRoom Magnets { get; }
    public PottingRoom Potting { get; }
    public UndoDesk Undo { get; }
    public InkRoom Ink { get; }
    public StepUndoing StepUndo { get; }
    public TimeMending Times { get; }
    public SetRoom Sets { get; }
    public TestBench Test { get; }
    public Dispatch Dispatch { get; }
    public ReturnDesk Returns { get; }
    public TraceDesk Trace { get; }
    public CustomerBook Customers { get; }
}

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
    public PieceServices(IShopRecords records, WindingService winding, TimeProvider time)
    {
        Shelf = new PieceService(records, time);
        Coils = new CoilService(records, winding);
        Assembly = new AssemblyService(records, Shelf, Coils);
        Steps = new StepService(records, Shelf);
        Magnets = new MagnetChargeService(records, Shelf);
        Potting = new PottingService(records, Shelf);
        Undo = new UndoService(records, Shelf, Potting);
        Ink = new InkService(records, Shelf, time);
        StepUndo = new StepUndoing(records, Shelf, Potting);
        Times = new TimeMending(records, Shelf, time);
        Sets = new SetService(records, Shelf, new OutputService(Coils));
        Test = new FinalTestService(records, Shelf, time);
        DispatchService = new DispatchService(records, Shelf);
        Returns = new ReturnService(records, Shelf, time);
        Trace = new TraceService(records, Shelf, winding.Dossiers);
        Search = new NameSearch(records, Trace);
        Customers = new CustomerService(records, time);
    }

    public PieceService Shelf { get; }
    public CoilService Coils { get; }
    public AssemblyService Assembly { get; }
    public StepService Steps { get; }
    public MagnetChargeService Magnets { get; }
    public PottingService Potting { get; }
    public UndoService Undo { get; }
    public InkService Ink { get; }
    public StepUndoing StepUndo { get; }
    public TimeMending Times { get; }
    public SetService Sets { get; }
    public FinalTestService Test { get; }
    public DispatchService DispatchService { get; }
    public ReturnService Returns { get; }
    public TraceService Trace { get; }
    public NameSearch Search { get; }
    public CustomerService Customers { get; }
}

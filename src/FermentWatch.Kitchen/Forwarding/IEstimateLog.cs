namespace FermentWatch.Kitchen.Forwarding;

/// <summary>Estimates in the order in which they were said, kept until they have been passed on.</summary>
public interface IEstimateLog : IForwardLog<SavedEstimate>
{
    /// <summary>Notes estimates. Where a jar has one of that very millisecond already, the next free millisecond is taken.</summary>
    Task NoteAsync(IReadOnlyList<SavedEstimate> estimates, CancellationToken cancellationToken);

    /// <summary>For each jar the inputs of the estimate noted last.</summary>
    Task<IReadOnlyDictionary<Guid, string>> LastInputsAsync(CancellationToken cancellationToken);
}

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Turns a request into a forecast.</summary>
public static class Forecaster
{
    /// <summary>Computes the forecast.</summary>
    /// <exception cref="ArgumentException">The request has refusals; ask <see cref="ForecastRequest.Check"/> first.</exception>
    public static Forecast Run(ForecastRequest request)
    {
        IReadOnlyList<Refusal> refusals = request.Check();
        if (refusals.Count > 0)
            throw new ArgumentException(string.Join("; ", refusals), nameof(request));
        throw new NotSupportedException("The solver comes with the next commit.");
    }
}

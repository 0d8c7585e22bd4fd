namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Residuals to be made small.</summary>
internal interface ILeastSquaresProblem
{
    /// <summary>Number of unknowns, standardized by their priors.</summary>
    int Unknowns { get; }

    /// <summary>Number of residuals of readings, which come first; one for each unknown follows, the unknown itself.</summary>
    int Readings { get; }

    /// <summary>Residuals at the unknowns.</summary>
    void Residuals(double[] unknowns, double[] residuals);
}

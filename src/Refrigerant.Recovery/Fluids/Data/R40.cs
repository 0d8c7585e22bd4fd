using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-40, chloromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R40
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-40",
        Name = "chloromethane",
        CasNumber = "74-87-3",
        Source = "Thol, Monika and Piazza, Lorenzo and Span, Roland, (2014), A New Functional Form for Equations of "
            + "State for Some Weakly Associating Fluids, Int. J. Thermophys., vol. 35, 783-811, "
            + "doi:10.1007/s10765-014-1633-1",
        MolarMass = 0.05048752,
        GasConstant = 8.314472,
        ReducingTemperature = 416.3,
        ReducingMolarDensity = 7194.233,
        CriticalTemperature = 416.3,
        CriticalPressure = 6671686.977141849,
        CriticalMolarDensity = 7194.233,
        AcentricFactor = 0.15006849639620867,
        MinimumTemperature = 175,
        MaximumTemperature = 730,
        MaximumPressure = 100000000,
        IdealGas = new IdealHelmholtz(
            logTau: 2.92518,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -0.060842, -1 },
                { -0.11525, -2 },
                { 0.010843, -3 },
            },
            planckEinstein: new double[,]
            {
                { 3.764997, 3.7101 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.274572058, 1, -0.75, 0 },
                { 0.0104235924, 1, -0.25, 0 },
                { -1.2572771, 1, 1.25, 0 },
                { 0.00225609199, 2, 0.75, 0 },
                { -0.0331830421, 3, -1, 0 },
                { 0.0918440878, 3, -0.375, 0 },
                { 0.00261059608, 5, 1.25, 0 },
                { -0.0948880966, 1, 2.375, 1 },
                { -0.0843634836, 1, 3, 1 },
                { 0.22626366, 2, 2.625, 1 },
                { -0.047076594, 5, 1.875, 1 },
                { -0.196610405, 1, 4.5, 2 },
                { -0.0204318929, 3, 5.75, 2 },
                { -0.0692145009, 4, 5.375, 2 },
                { 0.0148974844, 5, 2.75, 2 },
                { -0.00642544485, 2, 14.5, 3 },
            },
        },
    };
}

using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-601a, isopentane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R601a
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-601a",
        Name = "isopentane",
        CasNumber = "78-78-4",
        Source = "E.W. Lemmon and R. Span, (2006), Short Fundamental Equations of State for 20 Industrial Fluids, J. "
            + "Chem. Eng. Data, vol. 51, 785-850, doi:10.1021/je050186n",
        MolarMass = 0.07214878,
        GasConstant = 8.314472,
        ReducingTemperature = 460.35,
        ReducingMolarDensity = 3271,
        CriticalTemperature = 460.35,
        CriticalPressure = 3378000,
        CriticalMolarDensity = 3271,
        AcentricFactor = 0.2274,
        MinimumTemperature = 112.65,
        MaximumTemperature = 500,
        MaximumPressure = 1000000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 7.4056, 0.9601390246551537 },
                { 9.5772, 2.409036602584989 },
                { 15.765, 4.494406429890301 },
                { 12.119, 9.108287172803301 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.0963, 1, 0.25, 0 },
                { -3.0402, 1, 1.125, 0 },
                { 1.0317, 1, 1.5, 0 },
                { -0.1541, 2, 1.375, 0 },
                { 0.11535, 3, 0.25, 0 },
                { 0.00029809, 7, 0.875, 0 },
                { 0.39571, 2, 0.625, 1 },
                { -0.045881, 5, 1.75, 1 },
                { -0.35804, 1, 3.625, 2 },
                { -0.10107, 4, 3.625, 2 },
                { -0.035484, 3, 14.5, 3 },
                { 0.018156, 4, 12, 3 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00055471, 4.6576E-06 },
            { 223.32, 0.00041493, 5.1797E-06 },
            { 245.64, 0.00032176, 5.7081E-06 },
            { 267.97, 0.0002561, 6.2477E-06 },
            { 290.29, 0.00020774, 6.7952E-06 },
            { 312.61, 0.00017067, 7.3518E-06 },
            { 334.93, 0.00014123, 7.9311E-06 },
            { 357.25, 0.00011706, 8.5629E-06 },
            { 379.57, 9.6593E-05, 9.3051E-06 },
            { 401.9, 7.8669E-05, 1.0277E-05 },
            { 424.22, 6.2336E-05, 1.1761E-05 },
            { 446.54, 4.6073E-05, 1.471E-05 },
        },
    };
}

using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-365mfc, 1,1,1,3,3-pentafluorobutane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R365mfc
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-365mfc",
        Name = "1,1,1,3,3-pentafluorobutane",
        CasNumber = "406-58-6",
        Source = "Eric W. Lemmon and Roland Span, (2016, submitted), Thermodynamic Properties of R-227ea, R-365mfc, "
            + "R-115, and R13I1, J. Chem. Eng. Data, doi:10.1021/acs.jced.5b00684",
        MolarMass = 0.14807452,
        GasConstant = 8.3144621,
        ReducingTemperature = 460,
        ReducingMolarDensity = 3200,
        CriticalTemperature = 460,
        CriticalPressure = 3266207.0678832484,
        CriticalMolarDensity = 3200,
        AcentricFactor = 0.3774450971682668,
        MinimumTemperature = 239,
        MaximumTemperature = 500,
        MaximumPressure = 35000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 17.47, 1.236956521739131 },
                { 16.29, 4.852173913043479 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 2.20027, 1, 0.24, 0 },
                { -2.8624, 1, 0.67, 0 },
                { 0.384559, 2, 0.5, 0 },
                { -0.621227, 2, 1.25, 0 },
                { 0.0665967, 4, 1, 0 },
                { -1.19383, 1, 3.35, 1 },
                { 0.635935, 3, 2.5, 1 },
                { 0.461728, 6, 0.96, 1 },
                { -0.533472, 6, 1.07, 1 },
                { -1.07101, 2, 5.6, 2 },
                { 0.13929, 3, 6.9, 2 },
            },
            Gaussian = new double[,]
            {
                { -0.385506, 1, 3, 0.97, 1.07, 1.48, 1.02 },
                { 0.885653, 1, 3.6, 0.94, 1.08, 1.49, 0.62 },
                { 0.226303, 1, 5, 2.15, 10.9, 1.01, 0.53 },
                { -0.166116, 2, 1.25, 2.66, 22.6, 1.16, 0.48 },
            },
        },
    };
}

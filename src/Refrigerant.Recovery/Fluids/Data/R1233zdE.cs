using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1233zd(E), trans-1-chloro-3,3,3-trifluoropropene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1233zdE
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1233zd(E)",
        Name = "trans-1-chloro-3,3,3-trifluoropropene",
        CasNumber = "102687-65-0",
        Source = "Ryo Akasaka and Eric W. Lemmon, (2022), An International Standard Formulation for "
            + "trans-1-Chloro-3,3,3-trifluoroprop-1-ene [R1233zd(E)] Covering Temperatures from the Triple-point "
            + "Temperature to 450 K and Pressures up to 100 MPa, J. Phys. Chem. Ref. Data, vol. 51, 023101, "
            + "doi:10.1063/5.0083026",
        MolarMass = 0.1304962,
        GasConstant = 8.314462618,
        ReducingTemperature = 438.86,
        ReducingMolarDensity = 3704,
        CriticalTemperature = 438.86,
        CriticalPressure = 3582800,
        CriticalMolarDensity = 3704,
        AcentricFactor = 0.304,
        MinimumTemperature = 165.75,
        MaximumTemperature = 450,
        MaximumPressure = 100000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 13.7, 1.7340381898555348 },
                { 7.0974, 6.539670965683817 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.04394257, 4, 1, 0 },
                { 1.062919, 1, 0.182, 0 },
                { -1.2879140374971, 1, 0.865, 0 },
                { -0.8088618920845, 2, 1.0924, 0 },
                { 0.2372427, 3, 0.49, 0 },
                { -1.9403, 1, 1.958, 2 },
                { -2.831967, 3, 2.05, 2 },
                { 0.373421, 2, 0.658, 1 },
                { -1.515798, 2, 2.051, 2 },
                { -0.02755627, 7, 0.862, 1 },
            },
            Gaussian = new double[,]
            {
                { 4.24023, 1, 1.852, 1.532, 0.2912, 1.7171, 0.8834 },
                { -0.03152671, 2, 1.92, 0.635, 0.6245, 0.63, 1.386 },
                { -1.366494, 3, 1.936, 1.4056, 0.669, 0.7852, 0.5196 },
                { 2.647143, 1, 1.515, 1.451, 0.5798, 2.251, 1.133 },
                { -2.325463, 1, 2.668, 1.395, 0.4643, 1.821, 0.9788 },
                { -0.2541521, 1, 1.755, 2.259, 2.449, 2.074, 1.166 },
                { 0.1330834, 1, 0.526, 24.3, 1061.4, 1.0797, 0.9244 },
                { -0.1569217, 1, 2.98, 23.6, 917.8, 1.084, 0.9372 },
            },
        },
    };
}

package app.ramkeeper.audit;

import jakarta.persistence.EntityManagerFactory;
import javax.sql.DataSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.transaction.PlatformTransactionManager;

@Configuration
class AuditConfiguration {

    @Bean
    PlatformTransactionManager transactionManager(EntityManagerFactory factory, DataSource dataSource) {
        return new AuditedTransactionManager(factory, dataSource);
    }
}

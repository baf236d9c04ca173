package app.ramkeeper.audit;

import jakarta.persistence.EntityManagerFactory;
import javax.sql.DataSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

@Configuration
class AuditConfiguration {

    @Bean
    PlatformTransactionManager transactionManager(EntityManagerFactory factory, DataSource dataSource) {
        return new AuditedTransactionManager(factory, dataSource);
    }

    /** Sessions bring a template of their own, without an actor; all other code gets this one. */
    @Bean
    @Primary
    TransactionTemplate transactionTemplate(PlatformTransactionManager transactionManager) {
        return new TransactionTemplate(transactionManager);
    }
}
